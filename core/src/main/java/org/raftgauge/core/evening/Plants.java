// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;

/**
 * What was seen of all plants up to an evening.
 *
 * @param standing those that stand at its end, as they grow now
 * @param ended those that have left, and growth before a cut or transplanting
 */
record Plants(List<PlantSeries> standing, List<PlantSeries> ended) {

  /** Parts series of all plants. */
  static Plants of(CropBook book, List<PlantSeries> all, LocalDate evening) {
    List<PlantSeries> standing = CollectSeries.standing(book, all, evening);
    Set<PlantSeries> stand = Collections.newSetFromMap(new IdentityHashMap<>());
    stand.addAll(standing);
    return new Plants(standing, all.stream().filter(s -> !stand.contains(s)).toList());
  }
}
