// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;

/** Parts what is seen on an evening into patches, and keeps the patches from evening to evening. */
final class FindPatches {
  private final Map<Cohort, Map<String, Patch>> patches = new LinkedHashMap<>();

  /** Parts an evening's sights; those of a patch keep their order. */
  Map<Patch, PatchSights> of(List<Seen> seen) {
    Map<Patch, PatchSights> groups = new LinkedHashMap<>();
    Optional<PatchSights> before = Optional.empty();
    for (Seen each : seen) {
      // Plants come in the order of their rafts: most stand beside the one before.
      PatchSights group =
          before
              .filter(b -> each.isOn(b.patch()))
              .orElseGet(
                  () ->
                      groups.computeIfAbsent(
                          patch(each), p -> new PatchSights(p, new ArrayList<>())));
      group.seen().add(each);
      before = Optional.of(group);
    }
    return groups;
  }

  private Patch patch(Seen seen) {
    Cohort cohort = seen.plant().cohort();
    Planting planting = seen.plant().series().planting();
    return patches
        .computeIfAbsent(cohort, c -> new TreeMap<>())
        .computeIfAbsent(seen.sight().raft(), r -> new Patch(r, planting, cohort));
  }

  /** Returns the patches that have been seen. */
  List<Patch> all() {
    return patches.values().stream().flatMap(m -> m.values().stream()).toList();
  }
}
