// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The cells of a sites table or truth file that the tests compare.
 *
 * @param projectedCm2 projected area; absent where held
 * @param visibleCm2 visible area; absent where held
 * @param closed the cell, where the file has it
 */
record SiteLine(OptionalDouble projectedCm2, OptionalDouble visibleCm2, Optional<String> closed) {

  /**
   * Reads a file by photo, raft and site. These columns hold no quoted text, nor do earlier ones.
   */
  static Map<String, SiteLine> read(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file);
    List<String> header = Arrays.asList(lines.get(0).split(",", -1));
    Map<String, SiteLine> sites = new LinkedHashMap<>();
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = Arrays.asList(line.split(",", -1));
      String key =
          String.join(
              " ", cell(header, cells, "photo"), cell(header, cells, "raft"), site(header, cells));
      sites.put(
          key,
          new SiteLine(
              number(cell(header, cells, "projected_area_cm2")),
              number(cell(header, cells, "visible_area_cm2")),
              header.contains("closed")
                  ? Optional.of(cell(header, cells, "closed"))
                  : Optional.empty()));
    }
    return sites;
  }

  /** Writes lines in the golden file's form. */
  static String golden(Map<String, SiteLine> sites) {
    StringBuilder text =
        new StringBuilder("photo,raft,site,projected_area_cm2,visible_area_cm2,closed\n");
    sites.forEach(
        (key, site) ->
            text.append(key.replace(' ', ','))
                .append(',')
                .append(cell(site.projectedCm2()))
                .append(',')
                .append(cell(site.visibleCm2()))
                .append(',')
                .append(site.closed().orElse(""))
                .append('\n'));
    return text.toString();
  }

  private static String cell(OptionalDouble number) {
    return number.isPresent() ? Double.toString(number.getAsDouble()) : "";
  }

  private static OptionalDouble number(String cell) {
    return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
  }

  private static String site(List<String> header, List<String> cells) {
    return cell(header, cells, "site");
  }

  private static String cell(List<String> header, List<String> cells, String column) {
    return cells.get(header.indexOf(column));
  }
}
