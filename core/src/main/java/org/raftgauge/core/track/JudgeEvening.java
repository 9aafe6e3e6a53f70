// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.PlantSeries;

/** Says of everything that was seen on an evening how it stands. */
public final class JudgeEvening {

  private JudgeEvening() {}

  /**
   * Judges an evening from the series of all plants up to it.
   *
   * @param book the crop book: limits and emergence by crop
   * @param series what was seen of each plant, nothing later than the evening
   * @param evening the evening
   * @param rules how departures are judged
   * @return one row for each site seen that evening, each of their rafts and ponds, and each
   *     station in doubt, sorted
   */
  public static List<Judged> judge(
      CropBook book, List<PlantSeries> series, LocalDate evening, TrackRules rules) {
    FarmPass pass = FarmPass.through(series, s -> limits(book, s), rules);
    List<Follow> tonight =
        pass.plants().stream().filter(p -> p.series().last().evening().equals(evening)).toList();
    List<Judged> rows = new ArrayList<>();
    boolean fresh = pass.lastEvening().filter(evening::equals).isPresent();
    JudgeGroups groups = new JudgeGroups(pass, evening);
    if (fresh) {
      rows.addAll(groups.stations());
      rows.addAll(groups.ponds());
      rows.addAll(groups.rafts());
    }
    JudgeSites sites = new JudgeSites(book, tonight, groups, rules);
    rows.addAll(sites.rows());
    rows.sort(Judged.ORDER);
    return rows;
  }

  private static Crop.Limits limits(CropBook book, PlantSeries series) {
    Optional<Crop> crop = book.crop(series.planting());
    return crop.map(Crop::limits).orElse(Crop.Limits.defaults());
  }
}
