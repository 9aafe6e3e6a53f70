// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Weighing;

/**
 * Heights that a ruler gave of plants of a photo: those weighed within a day after it. A plant
 * weighed before it is gone from its site, as a rule.
 */
final class RulerHeights {
  /** A head grows some 5 % taller in a day, a fifth of what a crop's model may be off. */
  private static final Duration NEAR = Duration.ofHours(24);

  private RulerHeights() {}

  /** Returns the height of the top over the deck by site, mm; the weighing nearest in time. */
  static Map<SiteId, Double> topMm(CropBook book, String raft, OffsetDateTime at) {
    Map<SiteId, Double> tops = new TreeMap<>();
    book.diary().weighings().stream()
        .filter(w -> w.raft().equals(raft) && w.topHeightMm().isPresent() && near(w, at))
        .sorted(Comparator.comparing((Weighing w) -> w.weighedAt().toInstant()))
        .forEach(w -> tops.putIfAbsent(w.site(), w.topHeightMm().getAsDouble()));
    return tops;
  }

  private static boolean near(Weighing weighing, OffsetDateTime at) {
    Duration after = Duration.between(at, weighing.weighedAt());
    return !after.isNegative() && after.compareTo(NEAR) <= 0;
  }
}
