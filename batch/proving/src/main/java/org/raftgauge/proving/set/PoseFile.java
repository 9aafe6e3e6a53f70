// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.set.MakePhoto.Made;

/**
 * Writes {@code poses.csv}: per photo and raft the exact R and t of {@code X_cam = R (x, y, -z) +
 * t}, x and y in mm of the board and z up, and the lens.
 */
final class PoseFile {
  private static final String HEADER =
      "photo,raft,layout,station,r11,r12,r13,r21,r22,r23,r31,r32,r33,t1_mm,t2_mm,t3_mm,"
          + "fx_px,fy_px,cx_px,cy_px,k1,k2,p1,p2,k3";

  private PoseFile() {}

  /** Writes the file. */
  static void write(Path file, List<Made> made) throws IOException {
    List<String> lines = new ArrayList<>(List.of(HEADER));
    for (Made photo : made) {
      for (Raft raft : photo.rafts()) {
        List<String> cells =
            new ArrayList<>(
                List.of(
                    photo.plan().path(),
                    raft.id(),
                    raft.layout().name(),
                    photo.plan().station().name()));
        pose(photo.camera(), raft, cells);
        lens(photo.camera().lens(), cells);
        lines.add(String.join(",", cells));
      }
    }
    RenderSet.write(file, lines);
  }

  private static void pose(Camera camera, Raft raft, List<String> cells) {
    double cos = Math.cos(raft.place().turnRad());
    double sin = Math.sin(raft.place().turnRad());
    for (int i = 0; i < 3; i++) {
      double a = camera.rotation(i, 0);
      double b = camera.rotation(i, 1);
      for (double value :
          new double[] {a * cos + b * sin, b * cos - a * sin, camera.rotation(i, 2)}) {
        cells.add(String.format(Locale.ROOT, "%.12f", value));
      }
    }
    for (int i = 0; i < 3; i++) {
      double shift =
          camera.rotation(i, 0) * raft.place().xMm()
              + camera.rotation(i, 1) * raft.place().yMm()
              + camera.shift(i);
      cells.add(String.format(Locale.ROOT, "%.6f", shift));
    }
  }

  private static void lens(Lens lens, List<String> cells) {
    double[] values = {
      lens.fxPx(),
      lens.fyPx(),
      lens.cxPx(),
      lens.cyPx(),
      lens.k1(),
      lens.k2(),
      lens.p1(),
      lens.p2(),
      lens.k3()
    };
    for (double value : values) {
      cells.add(String.format(Locale.ROOT, "%.6f", value));
    }
  }
}
