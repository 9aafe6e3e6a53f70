// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import org.raftgauge.batch.fixture.SmallPhoto;

/**
 * Puts a case of the photo catalogues into a photo folder. Its first change says which photo is
 * looked for:
 *
 * <pre>
 * photo FILE: RECIPE      see {@link PhotoRecipe}
 * tag FILE: TEXT          a drawn board with a QR tag of that text
 * link FILE: TARGET       a symbolic link, the target relative to the file
 * folder FILE:            an empty folder
 * many FILE: COUNT        so many empty files, named FILE with the number behind it
 * longtag FILE: COUNT     a tag of so many characters
 * </pre>
 */
final class PhotoFolderCase {

  private PhotoFolderCase() {}

  static String photo(BookCase each) {
    return file(each.changes().get(0));
  }

  static void make(BookCase each, Path photos) throws IOException {
    for (String change : each.changes()) {
      Path file = photos.resolve(file(change));
      Files.createDirectories(file.getParent());
      make(change.substring(0, change.indexOf(' ')), file, text(change));
    }
  }

  private static void make(String verb, Path file, String text) throws IOException {
    switch (verb) {
      case "photo" -> Files.write(file, PhotoRecipe.bytes(text));
      case "tag" -> tag(file, BookCase.plain(text));
      case "longtag" -> tag(file, "A9".repeat(Integer.parseInt(text) / 2));
      case "link" -> Files.createSymbolicLink(file, Path.of(text));
      case "folder" -> Files.createDirectories(file);
      case "many" -> {
        for (int i = 0; i < Integer.parseInt(text); i++) {
          Files.createFile(file.resolveSibling(file.getFileName().toString() + i));
        }
      }
      default -> throw new IllegalStateException("no such change: " + verb);
    }
  }

  /** Draws a tag; its station is told by its folder, its day by the number of the file. */
  private static void tag(Path file, String text) throws IOException {
    Files.write(file, SmallPhoto.file(SmallPhoto.tagged(text), "png"));
    String name = file.getFileName().toString();
    LocalDate day = LocalDate.of(2026, 1, 1).plusDays(Integer.parseInt(name.replaceAll("\\D", "")));
    Path manifest = file.getParent().resolveSibling("manifest.csv");
    if (!Files.exists(manifest)) {
      Files.writeString(manifest, "photo,taken_at\n");
    }
    Files.writeString(
        manifest,
        file.getParent().getFileName() + "/" + name + "," + day + "\n",
        StandardOpenOption.APPEND);
  }

  private static String file(String change) {
    return BookCase.plain(change.substring(change.indexOf(' ') + 1, colon(change)));
  }

  private static String text(String change) {
    return change.substring(Math.min(change.length(), colon(change) + 2));
  }

  private static int colon(String change) {
    return change.indexOf(':');
  }
}
