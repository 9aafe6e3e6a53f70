// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/** Writes {@code verdicts.csv}: what is said of each station, pond, raft and site, and why. */
public final class VerdictsTable {
  private static final List<String> HEADER =
      List.of(
          "scope",
          "station",
          "pond",
          "raft",
          "site",
          "plant",
          "crop",
          "taken_at",
          "dat",
          "verdict",
          "also",
          "area_cm2",
          "expected_area_cm2",
          "share_of_expected",
          "share_lo95",
          "share_hi95",
          "days_behind",
          "probability",
          "z",
          "innovation",
          "ewma",
          "rgr_per_day",
          "expected_rgr_per_day",
          "p_value",
          "q_value",
          "reference",
          "pattern",
          "evidence");

  private VerdictsTable() {}

  /**
   * Writes the table, in the order of {@link Judged#ORDER}.
   *
   * @param verdicts any
   * @return the text of the file
   */
  public static String csv(List<Judged> verdicts) {
    CsvText csv = new CsvText(HEADER);
    for (Judged row : verdicts.stream().sorted(Judged.ORDER).toList()) {
      place(csv, row);
      share(csv, row.share());
      change(csv, row.change());
      csv.text(row.share().map(s -> s.basis().word()).orElse(""))
          .text(row.pattern().word())
          .text(row.evidence())
          .endRow();
    }
    return csv.toString();
  }

  private static void place(CsvText csv, Judged row) {
    Judged.Place place = row.place();
    csv.text(row.scope().word())
        .text(place.station())
        .text(place.pond())
        .text(place.raft())
        .text(place.site().map(SiteId::toString).orElse(""))
        .text(place.plant())
        .text(place.crop())
        .time(place.takenAt())
        .number(place.ageDays(), 3)
        .text(row.verdict().word())
        .list(row.also().stream().map(Verdict::word).toList());
  }

  private static void share(CsvText csv, Optional<Judged.Share> share) {
    csv.number(of(share, Judged.Share::areaCm2), 2)
        .number(of(share, Judged.Share::expectedAreaCm2), 2)
        .number(of(share, Judged.Share::shareOfExpected), 3)
        .number(of(share, Judged.Share::lo95), 3)
        .number(of(share, Judged.Share::hi95), 3)
        .number(share.map(Judged.Share::daysBehind).orElse(OptionalDouble.empty()), 2)
        .number(of(share, Judged.Share::probability), 4)
        .number(of(share, Judged.Share::z), 2);
  }

  private static void change(CsvText csv, Optional<Judged.Change> change) {
    csv.number(of(change, Judged.Change::innovation), 2)
        .number(of(change, Judged.Change::ewma), 2)
        .number(of(change, Judged.Change::ratePerDay), 4)
        .number(of(change, Judged.Change::expectedRatePerDay), 4)
        .number(of(change, Judged.Change::pValue), 5)
        .number(of(change, Judged.Change::qValue), 5);
  }

  private static <T> OptionalDouble of(Optional<T> whole, ToDoubleFunction<T> part) {
    return whole.stream().mapToDouble(part).findFirst();
  }
}
