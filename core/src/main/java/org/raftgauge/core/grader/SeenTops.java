// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Takes top heights from the second camera where no ruler gave them: of all weighed plants or of
 * none, for a ruler's top and the camera's stand at different places of a plant.
 */
final class SeenTops {

  private SeenTops() {}

  /** Returns the plants, their tops from one source; {@code sightings} in the same order. */
  static List<Weighed> where(List<Weighed> weighed, List<Sighting> sightings) {
    boolean byRuler = weighed.stream().allMatch(w -> w.traits().topHeightMm().isPresent());
    boolean seen = sightings.stream().allMatch(s -> s.seen().isPresent());
    if (byRuler || !seen) {
      return weighed;
    }
    List<Weighed> withTops = new ArrayList<>();
    for (int i = 0; i < weighed.size(); i++) {
      double top = sightings.get(i).seen().orElseThrow().p95Mm();
      withTops.add(weighed.get(i).with(weighed.get(i).traits().withTop(OptionalDouble.of(top))));
    }
    return withTops;
  }
}
