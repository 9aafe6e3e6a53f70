// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;

/**
 * Checks that weighings, calls and harvests go with a board that their raft has had: the sites are
 * on it, and the heads are no more than it has sites.
 */
final class LogSites {
  private final List<Tenure> tenures;
  private final Map<String, List<Layout>> layouts;
  private final Findings findings;

  LogSites(List<Tenure> tenures, Map<String, List<Layout>> layouts, Findings findings) {
    this.tenures = tenures;
    this.layouts = layouts;
    this.findings = findings;
  }

  void check(Diary diary) {
    diary.weighings().forEach(w -> check("weighings.csv:" + w.line(), w.raft(), w.site()));
    diary
        .calls()
        .forEach(c -> c.site().ifPresent(s -> check("calls.csv:" + c.line(), c.raft(), s)));
    diary.harvests().forEach(this::check);
  }

  /** Several plants may stand in one hole, so that more heads than holes are a doubt only. */
  private void check(HarvestTotal harvest) {
    List<Optional<Layout>> boards = boards(harvest.raft());
    int most =
        boards.stream()
            .mapToInt(b -> b.map(l -> l.grid().sites().size()).orElse(Integer.MAX_VALUE))
            .max()
            .orElse(Integer.MAX_VALUE);
    if (harvest.heads() > most) {
      findings.warning(
          "harvests.csv:" + harvest.line() + ": column heads",
          "\""
              + harvest.heads()
              + "\" are more than the "
              + most
              + " sites of raft "
              + harvest.raft(),
          "count heads, not grams or crates, or leave it where a site holds several");
    }
  }

  private List<Optional<Layout>> boards(String raft) {
    return tenures.stream()
        .map(Tenure::planting)
        .filter(planting -> planting.raft().equals(raft))
        .map(p -> Layouts.inForce(layouts, p.layout(), p.startsOn()))
        .distinct()
        .toList();
  }

  /** A raft whose layout cannot be read may have any site. */
  private void check(String row, String raft, SiteId site) {
    List<Optional<Layout>> boards = boards(raft);
    boolean may =
        boards.isEmpty()
            || boards.stream().anyMatch(b -> b.map(l -> l.grid().has(site)).orElse(true));
    if (!may) {
      Layout layout = boards.get(0).orElseThrow();
      findings.error(row + ": column site", Layouts.notOn(site, layout), Layouts.span(layout));
    }
  }
}
