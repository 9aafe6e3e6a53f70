// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Event;
import org.raftgauge.core.book.SiteId;

/** Words what the book says happened on a raft between two photos of it. */
final class DiaryEvents {
  private DiaryEvents() {}

  /**
   * Words them.
   *
   * @param book the book
   * @param raft the raft
   * @param since the evening after which they are wanted
   * @param until the evening up to which they are wanted
   * @return a clause for each, in the order of time
   */
  static List<String> words(CropBook book, String raft, LocalDate since, LocalDate until) {
    List<String> words = new ArrayList<>();
    Predicate<OffsetDateTime> between =
        at -> {
          LocalDate day = book.farmDay().evening(at.toInstant());
          return day.isAfter(since) && !day.isAfter(until);
        };
    for (Event event : book.events()) {
      boolean here = event.raft().equals(raft);
      if (between.test(event.at()) && (here || event.target().rafts().contains(raft))) {
        LocalDate day = book.farmDay().evening(event.at().toInstant());
        words.add(Texts.day(day) + ": " + (here ? left(event) : came(event)));
      }
    }
    return words;
  }

  private static String left(Event event) {
    String what = event.sites().isEmpty() ? "all plants" : names(event.sites());
    if (event.kind() != Event.Kind.MOVED) {
      return event.kind() == Event.Kind.CLEANED
          ? "board cleaned"
          : what + " " + event.kind().name().toLowerCase(Locale.ROOT);
    }
    boolean within =
        event.target().rafts().isEmpty() || event.target().rafts().contains(event.raft());
    String to = within ? "" : String.join(", ", event.target().rafts()) + " ";
    String where = (to + names(event.target().sites())).trim();
    return what + " moved" + (where.isEmpty() ? "" : " to " + where);
  }

  private static String came(Event event) {
    String what = event.sites().isEmpty() ? "plants" : names(event.sites());
    String to = event.target().sites().isEmpty() ? "" : " to " + names(event.target().sites());
    return what + " of " + event.raft() + " moved here" + to;
  }

  private static String names(List<SiteId> sites) {
    return sites.stream().map(SiteId::toString).collect(Collectors.joining(", "));
  }
}
