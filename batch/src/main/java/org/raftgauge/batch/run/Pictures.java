// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.core.measure.PhotoResult;

/** Makes the pictures of a run; several threads call it at once. */
public interface Pictures {

  /** Says whether any picture is wanted. */
  boolean wanted();

  /**
   * Draws all pictures of a photo.
   *
   * @param result the measured photo
   * @param name path of its pictures in the run folder, without ending
   * @param folder the run folder, under construction
   * @throws IOException if one cannot be written
   */
  void draw(PhotoResult result, String name, Path folder) throws IOException;

  /**
   * Copies the pictures of a photo from an earlier run, all or none.
   *
   * @param earlier the earlier run's folder
   * @param name path of the pictures in both run folders, without ending
   * @param folder the run folder, under construction
   * @return false if the earlier run lacks one that is wanted
   * @throws IOException if one cannot be written
   */
  boolean copy(Path earlier, String name, Path folder) throws IOException;
}
