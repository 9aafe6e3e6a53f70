// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;

/** Checks that the sites of weighings and calls are on a board that their raft has had. */
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
  }

  /** A raft whose layout cannot be read may have any site. */
  private void check(String row, String raft, SiteId site) {
    List<Optional<Layout>> boards =
        tenures.stream()
            .map(Tenure::planting)
            .filter(planting -> planting.raft().equals(raft))
            .map(p -> Layouts.inForce(layouts, p.layout(), p.startsOn()))
            .distinct()
            .toList();
    boolean may =
        boards.isEmpty()
            || boards.stream().anyMatch(b -> b.map(l -> l.grid().has(site)).orElse(true));
    if (!may) {
      Layout layout = boards.get(0).orElseThrow();
      findings.error(row + ": column site", Layouts.notOn(site, layout), Layouts.span(layout));
    }
  }
}
