// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.folder;

import java.nio.file.Path;
import java.util.List;

/**
 * What lies below a photo folder. Paths are relative to it, with forward slashes, in the order of
 * their Unicode code points.
 *
 * @param root the folder
 * @param photos the files whose names end like a photo's
 * @param notPhotos the other files, except hidden ones and those that systems and this program put
 *     there
 * @param unreadable folders that could not be opened, links to one that holds this one, and what is
 *     named like a photo and is no file
 */
public record PhotoFolder(
    Path root, List<String> photos, List<String> notPhotos, List<String> unreadable) {

  /** Copies the lists. */
  public PhotoFolder {
    photos = List.copyOf(photos);
    notPhotos = List.copyOf(notPhotos);
    unreadable = List.copyOf(unreadable);
  }

  /**
   * Returns where a photo is.
   *
   * @param photo one of the paths of this folder
   * @return its path on this machine
   */
  public Path fileOf(String photo) {
    return root.resolve(photo);
  }
}
