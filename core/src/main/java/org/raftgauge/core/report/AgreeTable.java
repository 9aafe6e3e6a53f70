// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Agreement;
import org.raftgauge.core.track.Judged;

/** Writes {@code agree.csv}: each call of the head grower beside the verdict of its evening. */
public final class AgreeTable {
  private static final List<String> HEADER =
      List.of(
          "called_on",
          "raft",
          "site",
          "call",
          "verdict",
          "agrees",
          "share_of_expected",
          "share_lo95",
          "share_hi95",
          "evidence",
          "by",
          "note",
          "picture");

  private AgreeTable() {}

  /**
   * Writes the table.
   *
   * @param agreement the calls and verdicts
   * @param picture where a picture of a case lies, or why there is none
   * @return the text of the file
   */
  public static String csv(Agreement agreement, Function<Agreement.Case, String> picture) {
    CsvText csv = new CsvText(HEADER);
    for (Agreement.Case each : agreement.cases()) {
      var share = each.judged().flatMap(Judged::share);
      csv.text(each.call().calledOn().toString())
          .text(each.call().raft())
          .text(each.call().site().map(SiteId::toString).orElse(""))
          .text(each.call().call())
          .text(each.judged().map(j -> j.verdict().word()).orElse(""));
      if (each.judged().isPresent()) {
        csv.flag(each.agrees());
      } else {
        csv.text("");
      }
      csv.number(share.map(s -> OptionalDouble.of(s.shareOfExpected())).orElse(none()), 3)
          .number(share.map(s -> OptionalDouble.of(s.lo95())).orElse(none()), 3)
          .number(share.map(s -> OptionalDouble.of(s.hi95())).orElse(none()), 3)
          .text(each.judged().map(Judged::evidence).orElse("not photographed that evening"))
          .text(each.call().by())
          .text(each.call().note())
          .text(picture.apply(each))
          .endRow();
    }
    return csv.toString();
  }

  private static OptionalDouble none() {
    return OptionalDouble.empty();
  }
}
