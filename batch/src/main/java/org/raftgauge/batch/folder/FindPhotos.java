// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.folder;

import java.io.IOException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/** Finds the photos in a folder and the folders below it. */
public final class FindPhotos {
  /** How pictures end that were painted on a photo to teach from, and lie beside it. */
  public static final String PAINTED_ENDING = ".labels.png";

  private static final Set<String> PHOTO_ENDINGS = Set.of("jpg", "jpeg", "png", "tif", "tiff");

  // Files that are expected beside photos: our manifest, and what Windows and macOS leave there.
  private static final Set<String> EXPECTED =
      Set.of("manifest.csv", "thumbs.db", "ehthumbs.db", "desktop.ini");

  // Code points, not the locale's alphabet, and not UTF-16 units: the same order everywhere.
  private static final Comparator<String> BY_CODE_POINT =
      (a, b) -> {
        int[] left = a.codePoints().toArray();
        int[] right = b.codePoints().toArray();
        return Arrays.compare(left, right);
      };

  private FindPhotos() {}

  /**
   * Lists the photos below a folder by their names' endings: jpg, jpeg, png, tif, tiff in any case.
   *
   * <p>Links are followed, but not round in circles, nor to a folder that the photo folder lies in:
   * the rest of the disk is none of its photos. Hidden files and folders (a leading dot) are passed
   * over, and so are pictures painted to teach from; a link to nowhere or a pipe that is named like
   * a photo is told with what cannot be read. Nothing is opened: whether a file is a picture is
   * told later, by its content.
   *
   * @param folder the photo folder
   * @return its photos and its other files, sorted
   * @throws IOException if the folder itself cannot be read
   */
  public static PhotoFolder in(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      throw new NoSuchFileException(folder.toString());
    }
    if (!Files.isDirectory(folder)) {
      throw new NotDirectoryException(folder.toString());
    }
    Walk walk = new Walk(folder);
    Files.walkFileTree(folder, EnumSet.of(FileVisitOption.FOLLOW_LINKS), Integer.MAX_VALUE, walk);
    return new PhotoFolder(
        folder, sorted(walk.photos), sorted(walk.notPhotos), sorted(walk.unreadable));
  }

  /**
   * Picks the photos from a list of files, as {@link #in} does from a folder.
   *
   * @param paths of files, relative, with forward slashes
   * @return those named like photos and not hidden, sorted
   */
  public static List<String> among(List<String> paths) {
    return sorted(
        paths.stream()
            .filter(path -> !("/" + path).contains("/."))
            .map(path -> Map.entry(path, path.toLowerCase(Locale.ROOT)))
            .filter(path -> namedLikePhoto(path.getValue()) && !isPainted(path.getValue()))
            .map(Map.Entry::getKey)
            .toList());
  }

  private static boolean namedLikePhoto(String name) {
    return name.contains(".") && PHOTO_ENDINGS.contains(name.substring(name.lastIndexOf('.') + 1));
  }

  private static boolean isPainted(String name) {
    return name.endsWith(PAINTED_ENDING);
  }

  private static List<String> sorted(List<String> paths) {
    return paths.stream().sorted(BY_CODE_POINT).toList();
  }

  private static final class Walk extends SimpleFileVisitor<Path> {
    private final Path root;
    private final List<String> photos = new ArrayList<>();
    private final List<String> notPhotos = new ArrayList<>();
    private final List<String> unreadable = new ArrayList<>();

    Walk(Path root) {
      this.root = root;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes)
        throws IOException {
      if (folder.equals(root)) {
        return FileVisitResult.CONTINUE;
      }
      if (isHidden(folder)) {
        return FileVisitResult.SKIP_SUBTREE;
      }
      if (Files.isSymbolicLink(folder) && root.toRealPath().startsWith(folder.toRealPath())) {
        unreadable.add(relative(folder));
        return FileVisitResult.SKIP_SUBTREE;
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
      if (isHidden(file) || EXPECTED.contains(name) || isPainted(name)) {
        return FileVisitResult.CONTINUE;
      }
      boolean named = namedLikePhoto(name);
      List<String> kind = attributes.isRegularFile() ? photos : unreadable;
      (named ? kind : notPhotos).add(relative(file));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException failure) throws IOException {
      if (file.equals(root)) {
        throw failure;
      }
      // A link back to a folder we are in is no loss: its photos are listed under their own path.
      if (!(failure instanceof FileSystemLoopException) && !isHidden(file)) {
        unreadable.add(relative(file));
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException failure) {
      if (failure != null) {
        unreadable.add(relative(folder));
      }
      return FileVisitResult.CONTINUE;
    }

    private static boolean isHidden(Path file) {
      return file.getFileName().toString().startsWith(".");
    }

    private String relative(Path file) {
      return StreamSupport.stream(root.relativize(file).spliterator(), false)
          .map(Path::toString)
          .collect(Collectors.joining("/"));
    }
  }
}
