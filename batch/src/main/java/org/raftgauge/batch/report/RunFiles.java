// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.Map;
import java.util.function.Predicate;
import org.raftgauge.batch.page.RunPictures;

/**
 * Finds the pictures of photos in a run folder.
 *
 * @param names path of each photo's pictures, without ending
 * @param exists says whether the run folder has a file
 */
record RunFiles(Map<String, String> names, Predicate<String> exists) {

  /** Returns the overlay of a photo, or an empty text. */
  String overlay(String photo) {
    return found(RunPictures.overlay(names.getOrDefault(photo, "")));
  }

  /** Returns the picture of the heights in a photo, or an empty text. */
  String heights(String photo) {
    return found(RunPictures.heights(names.getOrDefault(photo, "")));
  }

  /** Returns the picture of the board that a look shows, or an empty text. */
  String board(RaftLook look) {
    String name = names.getOrDefault(look.rows().photo().photo(), "");
    return found(RunPictures.board(name, look.place()));
  }

  private String found(String file) {
    return exists.test(file) ? file : "";
  }
}
