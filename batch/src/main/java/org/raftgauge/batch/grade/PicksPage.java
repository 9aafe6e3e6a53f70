// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.grader.Regime;

/**
 * The sheet to print: a map and a table to fill in for each raft. Who weighs must not know what the
 * grader expects, or the comparison of both is worth little (common practice, no source): neither
 * weight nor area stands on it.
 */
final class PicksPage {

  private PicksPage() {}

  static String of(CropBook book, PickBook.Request request, List<PickBook.Chosen> chosen)
      throws IOException {
    LocalDate evening = book.farmDay().evening(request.at().toInstant());
    Map<String, List<PickBook.Chosen>> byRaft =
        chosen.stream()
            .collect(
                Collectors.groupingBy(
                    c -> c.pick().candidate().raft(), LinkedHashMap::new, Collectors.toList()));
    List<Map<String, Object>> rafts = new ArrayList<>();
    for (List<PickBook.Chosen> own : byRaft.values()) {
      rafts.add(raft(book, evening, own));
    }
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("crop", request.crop());
    values.put("day", request.at().toLocalDate().toString());
    values.put("count", chosen.size());
    values.put("seed", Long.toString(request.seed()));
    values.put("rafts", rafts);
    return Page.fill("picks.ftlh", values);
  }

  private static Map<String, Object> raft(
      CropBook book, LocalDate evening, List<PickBook.Chosen> own) {
    Planting planting = own.get(0).planting();
    Map<String, Object> raft = new LinkedHashMap<>();
    raft.put("raft", planting.raft());
    raft.put("pond", planting.pond());
    raft.put("berth", planting.berth());
    raft.put("map", map(book.layout(planting.layout(), evening).map(Layout::grid), own));
    List<Map<String, Object>> sites = new ArrayList<>();
    for (PickBook.Chosen one : own) {
      sites.add(
          Map.of(
              "site", one.pick().candidate().site().toString(),
              "variety", one.planting().variety(),
              "closed", one.pick().candidate().regime() == Regime.CLOSED));
    }
    raft.put("sites", sites);
    return raft;
  }

  /** Returns the rows of the site map; a picked site is said, others are dots. */
  private static List<List<String>> map(Optional<SiteGrid> grid, List<PickBook.Chosen> own) {
    if (grid.isEmpty()) {
      return List.of();
    }
    List<SiteId> picked = own.stream().map(c -> c.pick().candidate().site()).toList();
    List<List<String>> rows = new ArrayList<>();
    for (int row = 0; row < grid.get().rows(); row++) {
      List<String> cells = new ArrayList<>();
      for (int column = 0; column < grid.get().columns(); column++) {
        SiteId site = new SiteId(row, column);
        cells.add(picked.contains(site) ? site.toString() : "");
      }
      rows.add(cells);
    }
    return rows;
  }
}
