// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.track.Judged;

/** Finds the verdict of something on an evening. */
final class Verdicts {
  private final Map<Of, Judged> rows = new HashMap<>();

  private final Map<Of, List<Judged>> ofRaft = new HashMap<>();

  private record Of(LocalDate evening, Judged.Scope scope, String name, Optional<SiteId> site) {}

  Verdicts(NavigableMap<LocalDate, List<Judged>> evenings) {
    evenings.forEach(
        (evening, judged) ->
            judged.forEach(
                row -> {
                  Of of = new Of(evening, row.scope(), name(row), row.place().site());
                  if (rows.putIfAbsent(of, row) == null && row.scope() == Judged.Scope.SITE) {
                    ofRaft
                        .computeIfAbsent(
                            new Of(evening, row.scope(), name(row), Optional.empty()),
                            r -> new ArrayList<>())
                        .add(row);
                  }
                }));
  }

  Optional<Judged> raft(LocalDate evening, String raft) {
    return find(evening, Judged.Scope.RAFT, raft);
  }

  Optional<Judged> pond(LocalDate evening, String pond) {
    return find(evening, Judged.Scope.POND, pond);
  }

  Optional<Judged> site(LocalDate evening, String raft, SiteId site) {
    return Optional.ofNullable(
        rows.get(new Of(evening, Judged.Scope.SITE, raft, Optional.of(site))));
  }

  /** Returns the rows of all sites of a raft. */
  List<Judged> sites(LocalDate evening, String raft) {
    return ofRaft.getOrDefault(
        new Of(evening, Judged.Scope.SITE, raft, Optional.empty()), List.of());
  }

  private Optional<Judged> find(LocalDate evening, Judged.Scope scope, String name) {
    return Optional.ofNullable(rows.get(new Of(evening, scope, name, Optional.empty())));
  }

  private static String name(Judged row) {
    return switch (row.scope()) {
      case STATION -> row.place().station();
      case POND -> row.place().pond();
      case RAFT, SITE -> row.place().raft();
    };
  }
}
