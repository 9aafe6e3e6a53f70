// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.show;

import java.io.IOException;
import java.nio.file.Path;

/** Paints the farm on which engines are compared; {@code batch/cluster/show} does the rest. */
public final class Show {

  private Show() {}

  /**
   * Paints.
   *
   * @param args folder, and number of photos
   * @throws IOException if they cannot be written
   */
  public static void main(String[] args) throws IOException {
    PaintFarm.into(Path.of(args[0]), Integer.parseInt(args[1]));
  }
}
