// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.time.LocalDate;
import java.util.Collection;
import java.util.TreeSet;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;

/** Names crop cycles: crop, variety and the day on which plantings began. */
public final class Cycles {
  /** Of rows that no planting explains. */
  public static final String NONE = "none";

  /** Of rows on several cycles. */
  public static final String SEVERAL = "several";

  private Cycles() {}

  /**
   * Names a planting's cycle.
   *
   * @param planting the planting
   * @return such as {@code butterhead-Marle_2026-03-01}
   */
  public static String of(Planting planting) {
    return CropBook.cropKey(planting.crop(), planting.variety())
            .replaceAll("[^\\p{L}\\p{N}.-]+", "-")
        + "_"
        + planting.startsOn();
  }

  /**
   * Names the cycle of several plantings.
   *
   * @param plantings any number
   * @return the one cycle that they share, else {@link #SEVERAL} or {@link #NONE}
   */
  public static String of(Collection<Planting> plantings) {
    TreeSet<String> cycles = new TreeSet<>();
    plantings.forEach(p -> cycles.add(of(p)));
    if (cycles.isEmpty()) {
      return NONE;
    }
    return cycles.size() == 1 ? cycles.first() : SEVERAL;
  }

  /**
   * Names the cycle of what stood somewhere on an evening.
   *
   * @param farm the book
   * @param evening the evening
   * @param raft the raft's id, or empty
   * @param site the site's name, or empty for the whole raft
   * @return its cycle
   */
  public static String on(Farm farm, LocalDate evening, String raft, String site) {
    if (raft.isEmpty()) {
      return NONE;
    }
    Collection<Planting> plantings = farm.plantingsOn(raft, evening);
    if (!site.matches("[A-Z]+\\d+")) {
      return of(plantings);
    }
    SiteId at = SiteId.parse(site);
    return of(plantings.stream().filter(p -> p.holds(at)).toList());
  }
}
