// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.PlantLife.Stay;

/** Derives how long each planting stood on its raft from the plants that stood there. */
final class Tenures {
  private Tenures() {}

  /** Takes the plants' stays, and the rows whose sites are not known (their layout is broken). */
  static List<Tenure> of(List<PlantLife> plants, List<PlantingRow> unlisted, FarmDay farmDay) {
    Map<Planting, List<Stay>> stays = new LinkedHashMap<>();
    plants.forEach(
        plant ->
            plant
                .stays()
                .forEach(
                    stay ->
                        stays.computeIfAbsent(stay.planting(), p -> new ArrayList<>()).add(stay)));
    List<Tenure> tenures = new ArrayList<>();
    stays.forEach((planting, list) -> tenures.add(tenure(planting, list)));
    for (PlantingRow row : unlisted) {
      Planting planting = row.planting();
      Instant from = farmDay.start(planting.startsOn());
      tenures.add(new Tenure(planting, from, planting.endedOn().map(farmDay::start)));
    }
    tenures.sort(Comparator.comparing(Tenure::raft).thenComparing(Tenure::from));
    return tenures;
  }

  private static Tenure tenure(Planting planting, List<Stay> stays) {
    Instant from = stays.stream().map(Stay::from).min(Comparator.naturalOrder()).orElseThrow();
    boolean open = stays.stream().anyMatch(stay -> stay.to().isEmpty());
    Optional<Instant> to =
        open
            ? Optional.empty()
            : stays.stream().map(stay -> stay.to().orElseThrow()).max(Comparator.naturalOrder());
    return new Tenure(planting, from, to);
  }
}
