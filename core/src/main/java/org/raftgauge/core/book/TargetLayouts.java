// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;

/** Tells which layout a raft has that plants are moved to. */
final class TargetLayouts {
  private final List<Planting> plantings;
  private final FarmDay farmDay;
  private final Findings findings;
  private final Map<String, String> known = new HashMap<>();

  TargetLayouts(LedgerInput input) {
    this.plantings = input.rows().stream().map(PlantingRow::planting).toList();
    this.farmDay = input.farmDay();
    this.findings = input.findings();
  }

  /**
   * Returns the layout of the raft's planting then, else the one that the event names, else that of
   * the raft's latest planting, else what an earlier move told; else, with a warning, that of the
   * source.
   */
  String nameFor(String raft, Event event, Planting source) {
    LocalDate evening = farmDay.evening(event.at().toInstant());
    List<Planting> own = plantings.stream().filter(p -> p.raft().equals(raft)).toList();
    Optional<String> named =
        Optional.of(event.target().layout()).filter(layout -> !layout.isEmpty());
    Optional<String> now =
        own.stream().filter(p -> p.holdsOn(evening)).findFirst().map(Planting::layout);
    if (now.isEmpty()) {
      named.ifPresent(layout -> known.put(raft, layout));
    }
    return now.or(() -> named)
        .or(() -> latest(own))
        .orElseGet(() -> known.computeIfAbsent(raft, r -> guess(r, event, source)));
  }

  private static Optional<String> latest(List<Planting> own) {
    return own.stream()
        .reduce((a, b) -> b.startsOn().isBefore(a.startsOn()) ? a : b)
        .map(Planting::layout);
  }

  private String guess(String raft, Event event, Planting source) {
    List<String> rafts = plantings.stream().map(Planting::raft).distinct().toList();
    findings.warning(
        Ledger.place(event, "to_raft"),
        "\""
            + raft
            + "\" has no row in plantings.csv; it is taken to have the layout "
            + source.layout(),
        "fill in to_layout, or mend the name"
            + NearestSpelling.of(raft, rafts).map(n -> " (\"" + n + "\"?)").orElse(""));
    return source.layout();
  }
}
