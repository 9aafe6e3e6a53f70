// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.set.Boards;

/**
 * A raft on a photo whose exact pose is known: {@code X_cam = R (x, y, -z) + t}.
 *
 * @param photo the photo's path below its folder
 * @param raft raft id
 * @param layout its board
 * @param lens the camera's lens
 * @param rotation R, row by row, 9 numbers
 * @param shiftMm t, mm, 3 numbers
 */
public record PosedRaft(
    String photo,
    String raft,
    Layout layout,
    Lens lens,
    List<Double> rotation,
    List<Double> shiftMm) {

  /** Checks the numbers. */
  public PosedRaft {
    rotation = List.copyOf(rotation);
    shiftMm = List.copyOf(shiftMm);
    if (rotation.size() != 9 || shiftMm.size() != 3) {
      throw new IllegalArgumentException(
          "a pose has 9 and 3 numbers, got " + rotation.size() + " and " + shiftMm.size());
    }
  }

  /**
   * Returns the posed camera of a photo.
   *
   * @param widthPx width of the photo
   * @param heightPx its height
   * @return the camera
   */
  public Camera camera(int widthPx, int heightPx) {
    return new Camera(lens, widthPx, heightPx, new Hold(0, 0, 1, 0, 0, 0))
        .posed(numbers(rotation), numbers(shiftMm));
  }

  private static double[] numbers(List<Double> list) {
    return list.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Reads {@code poses.csv} of a rendered set.
   *
   * @param file the file
   * @return its rafts, photo by photo
   * @throws IOException if it cannot be read
   */
  public static List<PosedRaft> readCsv(Path file) throws IOException {
    List<PosedRaft> rafts = new ArrayList<>();
    for (CSVRecord row : Table.read(file)) {
      List<Double> rotation = new ArrayList<>();
      List<Double> shift = new ArrayList<>();
      for (int i = 1; i <= 3; i++) {
        for (int k = 1; k <= 3; k++) {
          rotation.add(Table.number(row, "r" + i + k));
        }
        shift.add(Table.number(row, "t" + i + "_mm"));
      }
      Layout layout = Boards.named(row.get("layout"));
      rafts.add(
          new PosedRaft(row.get("photo"), row.get("raft"), layout, lens(row), rotation, shift));
    }
    return rafts;
  }

  private static Lens lens(CSVRecord row) {
    return new Lens(
        Table.number(row, "fx_px"),
        Table.number(row, "fy_px"),
        Table.number(row, "cx_px"),
        Table.number(row, "cy_px"),
        Table.number(row, "k1"),
        Table.number(row, "k2"),
        Table.number(row, "p1"),
        Table.number(row, "p2"),
        Table.number(row, "k3"));
  }
}
