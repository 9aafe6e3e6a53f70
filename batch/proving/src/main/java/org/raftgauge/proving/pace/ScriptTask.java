// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.proving.accuracy.PosedRaft;

/**
 * Writes as JSON what the plain script may know: the lens, the layouts, for boards without markers
 * their exact place, and where each raft lies, to name it.
 */
final class ScriptTask {
  private final Map<String, Layout> layouts = new LinkedHashMap<>();
  private final Map<String, List<PosedRaft>> photos = new LinkedHashMap<>();
  private final Path folder;

  private ScriptTask(Path set) throws IOException {
    this.folder = set.resolve("photos").toAbsolutePath();
    for (PosedRaft raft : PosedRaft.readCsv(set.resolve("poses.csv"))) {
      layouts.put(raft.layout().name(), raft.layout());
      photos.computeIfAbsent(raft.photo(), p -> new ArrayList<>()).add(raft);
    }
  }

  /** Writes the task of a set and returns its photos. */
  static List<String> write(Path set, Path file) throws IOException {
    ScriptTask task = new ScriptTask(set);
    Files.writeString(file, task.json());
    return List.copyOf(task.photos.keySet());
  }

  private String json() {
    List<String> boards = layouts.values().stream().map(ScriptTask::layout).toList();
    List<String> tasks =
        photos.entrySet().stream().map(e -> photo(e.getKey(), e.getValue())).toList();
    return "{\"layouts\":["
        + String.join(",", boards)
        + "],\n\"photos\":["
        + String.join(",\n", tasks)
        + "]}\n";
  }

  private static String layout(Layout layout) {
    List<PointMm> holes = layout.grid().sites().stream().map(layout.grid()::centre).toList();
    return "{"
        + text("name", layout.name())
        + ",\"board_mm\":"
        + numbers(layout.board().widthMm(), layout.board().lengthMm())
        + ",\"marker_side_mm\":"
        + layout.markers().map(CornerMarkers::sideMm).orElse(0.0)
        + ",\"marker_centres_mm\":"
        + points(layout.markers().map(CornerMarkers::centresMm).orElse(List.of()))
        + ",\"sites\":["
        + String.join(",", layout.grid().sites().stream().map(s -> "\"" + s + "\"").toList())
        + "],\"sites_mm\":"
        + points(holes)
        + "}";
  }

  private String photo(String photo, List<PosedRaft> rafts) {
    Lens lens = rafts.get(0).lens();
    return "{"
        + text("photo", photo)
        + ","
        + text("file", folder.resolve(photo).toString())
        + ","
        + text("layout", rafts.get(0).layout().name())
        + ",\"camera\":"
        + numbers(lens.fxPx(), 0, lens.cxPx(), 0, lens.fyPx(), lens.cyPx(), 0, 0, 1)
        + ",\"distortion\":"
        + numbers(lens.k1(), lens.k2(), lens.p1(), lens.p2(), lens.k3())
        + ",\"boards\":["
        + String.join(",", rafts.stream().map(ScriptTask::board).toList())
        + "]}";
  }

  /** Deck mm to px of the undistorted photo: K (r1 r2 t). */
  private static String board(PosedRaft raft) {
    Lens lens = raft.lens();
    double[] h = new double[9];
    for (int column = 0; column < 3; column++) {
      double x = entry(raft, 0, column);
      double y = entry(raft, 1, column);
      double z = entry(raft, 2, column);
      h[column] = lens.fxPx() * x + lens.cxPx() * z;
      h[3 + column] = lens.fyPx() * y + lens.cyPx() * z;
      h[6 + column] = z;
    }
    double x = raft.layout().board().widthMm() / 2;
    double y = raft.layout().board().lengthMm() / 2;
    double depth = h[6] * x + h[7] * y + h[8];
    return "{"
        + text("raft", raft.raft())
        + ",\"middle_px\":"
        + numbers((h[0] * x + h[1] * y + h[2]) / depth, (h[3] * x + h[4] * y + h[5]) / depth)
        + ",\"deck_to_undistorted\":"
        + numbers(h)
        + "}";
  }

  private static double entry(PosedRaft raft, int row, int column) {
    return column == 2 ? raft.shiftMm().get(row) : raft.rotation().get(3 * row + column);
  }

  private static String text(String key, String value) {
    return "\"" + key + "\":\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private static String numbers(double... values) {
    List<String> cells = new ArrayList<>();
    for (double value : values) {
      cells.add(String.format(Locale.ROOT, "%.9f", value));
    }
    return "[" + String.join(",", cells) + "]";
  }

  private static String points(List<PointMm> points) {
    return "["
        + String.join(",", points.stream().map(p -> numbers(p.xMm(), p.yMm())).toList())
        + "]";
  }
}
