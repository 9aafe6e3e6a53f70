// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.yaml.snakeyaml.Yaml;

/**
 * Reads exact poses from JSON, as the sample scenario ({@code stations} with a lens each, several
 * rafts a photo) and the path-traced data (one lens, one raft a photo, named by the file) write
 * them. JSON is read as the YAML it is.
 */
public final class PoseJson {
  private static final List<String> LENS =
      List.of("fx_px", "fy_px", "cx_px", "cy_px", "k1", "k2", "p1", "p2", "k3");
  private static final int DATE_LENGTH = "2026-03-06".length();

  private final Map<?, ?> json;
  private final CropBook book;

  private PoseJson(Map<?, ?> json, CropBook book) {
    this.json = json;
    this.book = book;
  }

  /**
   * Reads the poses of a file; rafts whose board the book does not know are left out.
   *
   * @param file the JSON file
   * @param book says which board a raft is
   * @return the rafts, photo by photo
   * @throws IOException if it cannot be read
   */
  public static List<PosedRaft> read(Path file, CropBook book) throws IOException {
    Map<?, ?> json = new Yaml().load(Files.readString(file));
    return new PoseJson(json, book).rafts();
  }

  private List<PosedRaft> rafts() {
    List<PosedRaft> rafts = new ArrayList<>();
    for (Map.Entry<?, ?> entry : map(json, "photos").entrySet()) {
      String photo = entry.getKey().toString();
      Map<?, ?> facts = (Map<?, ?>) entry.getValue();
      if (facts.containsKey("rafts")) {
        Map<?, ?> station = map(map(json, "stations"), facts.get("station").toString());
        Lens lens = lens(LENS.stream().map(map(station, "lens")::get).toList());
        map(facts, "rafts")
            .forEach((raft, pose) -> add(rafts, photo, raft.toString(), (Map<?, ?>) pose, lens));
      } else {
        String name = photo.substring(photo.lastIndexOf('_') + 1).replaceFirst("\\.\\w+$", "");
        add(rafts, photo, name, facts, onlyLens());
      }
    }
    return rafts;
  }

  private void add(List<PosedRaft> to, String photo, String raft, Map<?, ?> pose, Lens lens) {
    List<Double> rotation = new ArrayList<>();
    ((List<?>) pose.get("R")).forEach(row -> rotation.addAll(numbers((List<?>) row)));
    List<Double> shift = numbers((List<?>) pose.get("t"));
    LocalDate day = LocalDate.parse(photo.substring(0, DATE_LENGTH));
    for (Layout layout : boards(raft, day)) {
      to.add(new PosedRaft(photo, raft, layout, lens, rotation, shift));
    }
  }

  private List<Layout> boards(String raft, LocalDate day) {
    return book.plantings().stream()
        .filter(planting -> planting.raft().equals(raft))
        .flatMap(planting -> book.layout(planting.layout(), day).stream())
        .limit(1)
        .toList();
  }

  private Lens onlyLens() {
    List<Object> parts = new ArrayList<>();
    List.of("fx", "fy", "cx", "cy").forEach(key -> parts.add(json.get(key)));
    parts.addAll((List<?>) json.get("dist"));
    return lens(parts);
  }

  private static Lens lens(List<?> parts) {
    List<Double> n = numbers(parts);
    return new Lens(
        n.get(0), n.get(1), n.get(2), n.get(3), n.get(4), n.get(5), n.get(6), n.get(7), n.get(8));
  }

  /** YAML takes 1e-05 for text, so each number is read from its text. */
  private static List<Double> numbers(List<?> list) {
    return list.stream().map(value -> Double.parseDouble(value.toString())).toList();
  }

  private static Map<?, ?> map(Map<?, ?> in, String key) {
    if (in.get(key) instanceof Map<?, ?> found) {
      return found;
    }
    throw new IllegalArgumentException("no \"" + key + "\" in the pose file");
  }
}
