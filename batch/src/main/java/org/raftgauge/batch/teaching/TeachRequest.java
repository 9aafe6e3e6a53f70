// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.folder.FindPhotos;

/**
 * What is to be taught.
 *
 * @param book folder of the crop book
 * @param crop the crop, as the book names it
 * @param model name of the model
 * @param station of photos that nothing else places
 * @param pictures the labelled pictures
 */
public record TeachRequest(
    Path book, String crop, String model, Optional<String> station, List<Pair> pictures) {

  /** Copies the list. */
  public TeachRequest {
    pictures = List.copyOf(pictures);
  }

  /**
   * A photo and what was painted on it.
   *
   * @param photo the photo's file
   * @param labels the painted picture's file
   */
  public record Pair(Path photo, Path labels) {

    /**
     * Reads {@code PHOTO+LABEL}; without a plus the painted picture is the one that {@code --start}
     * names.
     *
     * @param text as the command line has it
     * @return the pair
     */
    public static Pair parse(String text) {
      int plus = text.lastIndexOf('+');
      return plus < 0
          ? new Pair(Path.of(text), labelsOf(Path.of(text)))
          : new Pair(Path.of(text.substring(0, plus)), Path.of(text.substring(plus + 1)));
    }

    /**
     * Returns where a photo's painted picture is looked for.
     *
     * @param photo the photo's file
     * @return beside it, {@code NAME.labels.png}
     */
    public static Path labelsOf(Path photo) {
      String name = photo.getFileName().toString();
      int dot = name.lastIndexOf('.');
      return photo.resolveSibling(
          (dot < 0 ? name : name.substring(0, dot)) + FindPhotos.PAINTED_ENDING);
    }
  }
}
