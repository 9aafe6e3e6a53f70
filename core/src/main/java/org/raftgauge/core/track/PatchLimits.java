// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.HashMap;
import java.util.Map;
import org.raftgauge.core.book.Crop;

/** The limits of lagging and ahead of patches, by their plants' crops. */
final class PatchLimits {
  private final Map<Patch, Crop.Limits> limits = new HashMap<>();
  private final Map<String, Crop.Limits> ponds = new HashMap<>();

  PatchLimits(FarmPass pass) {
    Map<String, Crop.Limits> crops = new HashMap<>();
    for (Follow plant : pass.plants()) {
      crops.merge(plant.series().planting().crop(), plant.limits(), PatchLimits::wider);
    }
    for (Patch patch : pass.patches()) {
      Crop.Limits own = crops.getOrDefault(patch.crop(), Crop.Limits.defaults());
      limits.put(patch, own);
      ponds.merge(patch.pond(), own, PatchLimits::wider);
    }
  }

  /** Returns the limits of a patch. */
  Crop.Limits of(Patch patch) {
    return limits.getOrDefault(patch, Crop.Limits.defaults());
  }

  /** Returns the limits of a pond, the widest of its patches. */
  Crop.Limits ofPond(String pond) {
    return ponds.getOrDefault(pond, Crop.Limits.defaults());
  }

  private static Crop.Limits wider(Crop.Limits a, Crop.Limits b) {
    return new Crop.Limits(
        Math.min(a.laggingShare(), b.laggingShare()),
        Math.max(a.aheadShare(), b.aheadShare()),
        a.closedOutline());
  }
}
