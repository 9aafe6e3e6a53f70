// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Predicate;
import org.raftgauge.core.book.Crop;

/** The limits of lagging and ahead of patches, by their plants' crops. */
final class PatchLimits {
  private final Map<Patch, Crop.Limits> limits = new HashMap<>();

  PatchLimits(FarmPass pass) {
    Map<String, Crop.Limits> crops = new HashMap<>();
    for (Follow plant : pass.plants()) {
      crops.merge(plant.series().planting().crop(), plant.limits(), PatchLimits::wider);
    }
    pass.patches()
        .forEach(p -> limits.put(p, crops.getOrDefault(p.crop(), Crop.Limits.defaults())));
  }

  /** Returns the limits of some patches, the widest of them. */
  Crop.Limits of(Predicate<Patch> which) {
    return limits.entrySet().stream()
        .filter(e -> which.test(e.getKey()))
        .map(Map.Entry::getValue)
        .reduce(PatchLimits::wider)
        .orElse(Crop.Limits.defaults());
  }

  private static Crop.Limits wider(Crop.Limits a, Crop.Limits b) {
    return new Crop.Limits(
        Math.min(a.laggingShare(), b.laggingShare()),
        Math.max(a.aheadShare(), b.aheadShare()),
        a.closedOutline());
  }
}
