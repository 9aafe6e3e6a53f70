// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.Pictures;
import org.raftgauge.core.measure.PhotoResult;

/**
 * Makes the pictures of a run: {@code overlays/NAME.jpg}, {@code boards/NAME.N.jpg} for the Nth
 * raft of the photo, counted from 0, {@code canopy/NAME.*.png}, and {@code heights/NAME.png} where
 * a second camera saw heights.
 */
public final class RunPictures implements Pictures {
  private static final int MOST_BOARDS = 100;

  private final Farm farm;
  private final Set<Kind> wanted;

  /** A kind of picture. */
  public enum Kind {
    /** The photo with outlines, names and areas. */
    OVERLAY,
    /** Coverage and owner of each photo pixel. */
    CANOPY
  }

  /**
   * Chooses the pictures.
   *
   * @param farm the book, for the captions
   * @param wanted what to make
   */
  public RunPictures(Farm farm, EnumSet<Kind> wanted) {
    this.farm = farm;
    this.wanted = Set.copyOf(wanted);
  }

  @Override
  public boolean wanted() {
    return !wanted.isEmpty();
  }

  @Override
  public void draw(PhotoResult result, String name, Path folder) throws IOException {
    if (wanted.contains(Kind.OVERLAY) && result.picture().isPresent()) {
      PictureFiles.jpeg(Overlay.of(result, farm), below(folder, overlay(name)));
      boards(result, name, folder);
    }
    if (wanted.contains(Kind.OVERLAY) && result.heights().isPresent()) {
      PngFile.write(HeightSheet.of(result), below(folder, heights(name)));
    }
    if (wanted.contains(Kind.CANOPY) && result.canopy().isPresent()) {
      Path coverage = below(folder, "canopy/" + name + ".coverage.png");
      PictureFiles.coverage(result.canopy().get(), coverage);
      PictureFiles.site(result.canopy().get(), below(folder, "canopy/" + name + ".site.png"));
    }
  }

  @Override
  public boolean copy(Path earlier, String name, Path folder) throws IOException {
    String overlay = overlay(name);
    if (wanted.contains(Kind.CANOPY) || !Files.isRegularFile(earlier.resolve(overlay))) {
      return false; // canopy is large, asked for seldom and quickly made anew
    }
    Files.copy(earlier.resolve(overlay), below(folder, overlay));
    if (Files.isRegularFile(earlier.resolve(heights(name)))) {
      Files.copy(earlier.resolve(heights(name)), below(folder, heights(name)));
    }
    for (int place = 0; place < MOST_BOARDS; place++) {
      Path board = earlier.resolve(board(name, place));
      if (Files.isRegularFile(board)) {
        Files.copy(board, below(folder, board(name, place)));
      }
    }
    return true;
  }

  /**
   * Returns where the picture of a board lies in the run folder.
   *
   * @param name path of its photo's pictures, without ending
   * @param place the raft's place in the photo, from 0
   * @return a path with forward slashes
   */
  public static String board(String name, int place) {
    return "boards/" + name + "." + place + ".jpg";
  }

  /**
   * Returns where a photo's overlay lies in the run folder.
   *
   * @param name path of its pictures, without ending
   * @return a path with forward slashes
   */
  public static String overlay(String name) {
    return "overlays/" + name + ".jpg";
  }

  /**
   * Returns where the picture of a photo's heights lies in the run folder.
   *
   * @param name path of its pictures, without ending
   * @return a path with forward slashes
   */
  public static String heights(String name) {
    return "heights/" + name + ".png";
  }

  private static void boards(PhotoResult result, String name, Path folder) throws IOException {
    for (int place = 0; place < result.drawings().size(); place++) {
      Optional<BufferedImage> board =
          BoardPicture.of(result.picture().orElseThrow(), result.drawings().get(place));
      if (board.isPresent()) {
        PictureFiles.jpeg(board.get(), below(folder, board(name, place)));
      }
    }
  }

  /** Returns a path below a folder with its parents made; refuses to leave the folder. */
  private static Path below(Path folder, String name) throws IOException {
    Path file = folder.resolve(name).normalize();
    if (!file.startsWith(folder)) {
      throw new IOException("\"" + name + "\" leads out of the run folder");
    }
    Files.createDirectories(file.getParent());
    return file;
  }
}
