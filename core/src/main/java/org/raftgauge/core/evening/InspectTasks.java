// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Task.Action;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Pattern;
import org.raftgauge.core.track.Verdict;

/** Finds the plants to look at: ponds, rafts, and sites, one row for a raft's sites of one kind. */
final class InspectTasks {
  /** What the rafts of a pond share (common practice, no source), with the design's cautions. */
  private static final String SHARED =
      "Look at what its rafts share: pump and flow, water temperature, dissolved oxygen, EC and"
          + " pH, light and air; a lamp or lens changed at the station looks much the same. Switch"
          + " a pump off at the mains before you reach for it. Photos tell that growth departs, not"
          + " why: measure before anything is changed; changes of feed or water treatment go to"
          + " your agronomist.";

  private final Tonight tonight;
  private final SeenItems seen;
  private final Set<String> slowPonds = new HashSet<>();
  private final Set<String> slowRafts = new HashSet<>();

  InspectTasks(Tonight tonight, SeenItems seen) {
    this.tonight = tonight;
    this.seen = seen;
    for (Judged row : tonight.verdicts()) {
      if (slow(row.verdict()) && row.scope() == Judged.Scope.POND) {
        slowPonds.add(row.place().pond());
      } else if (row.verdict() == Verdict.LAGGING && row.scope() == Judged.Scope.RAFT) {
        slowRafts.add(row.place().raft());
      }
    }
  }

  private static boolean slow(Verdict verdict) {
    return verdict == Verdict.LAGGING || verdict == Verdict.STALLED;
  }

  List<Task> tasks() {
    List<Task> tasks = new ArrayList<>();
    Map<String, List<Judged>> sites = new TreeMap<>();
    for (Judged row : tonight.verdicts()) {
      switch (row.scope()) {
        case STATION -> {}
        case POND -> pond(row).ifPresent(tasks::add);
        case RAFT -> raft(row).ifPresent(tasks::add);
        case SITE ->
            site(row).ifPresent(k -> sites.computeIfAbsent(k, x -> new ArrayList<>()).add(row));
      }
    }
    sites.forEach((item, rows) -> tasks.add(sites(item, rows)));
    return tasks;
  }

  private Optional<Task> pond(Judged row) {
    String pond = row.place().pond();
    String item = Item.ofEvening("inspect-pond", pond, tonight.evening());
    if (!slowPonds.contains(pond) || seen.hidesEvening(item)) {
      return Optional.empty();
    }
    String why = PhotoTasks.sentence(row.evidence()) + " " + SHARED;
    return Optional.of(task(1, Task.Where.ofPond(pond), why, item));
  }

  private Optional<Task> raft(Judged row) {
    String raft = row.place().raft();
    if (!slowRafts.contains(raft) || slowPonds.contains(row.place().pond())) {
      return Optional.empty();
    }
    String item = Item.ofRaft("inspect-raft", raft, tonight.cycle(raft));
    return !seen.hides(item)
        ? Optional.of(task(2, tonight.whole(raft), PhotoTasks.sentence(row.evidence()), item))
        : Optional.empty();
  }

  /** Returns the name of the row that a site goes to, or nothing where it needs none. */
  private Optional<String> site(Judged row) {
    Verdict verdict = row.verdict();
    boolean fine = verdict.isCalm() || verdict == Verdict.HELD;
    boolean shared =
        slowPonds.contains(row.place().pond()) || slowRafts.contains(row.place().raft());
    boolean slowWithPond = slow(verdict) && row.pattern() == Pattern.POND;
    boolean lagsWithOthers = verdict == Verdict.LAGGING && row.pattern() != Pattern.NONE;
    boolean said = shared && (slowWithPond || lagsWithOthers);
    if (fine || said) {
      return Optional.empty();
    }
    String raft = row.place().raft();
    String item = Item.ofRaft("inspect-" + verdict.word(), raft, tonight.cycle(raft));
    return seen.hidesSite(item, row.place().site().orElseThrow())
        ? Optional.empty()
        : Optional.of(item);
  }

  private Task sites(String item, List<Judged> rows) {
    List<SiteId> sites = rows.stream().map(r -> r.place().site().orElseThrow()).sorted().toList();
    Judged first = rows.get(0);
    Verdict verdict = first.verdict();
    int priority = urgent(verdict) ? 2 : 3;
    String raft = first.place().raft();
    String name = item + "/" + String.join("+", sites.stream().map(SiteId::toString).toList());
    return task(priority, tonight.at(raft, sites), why(verdict, rows), name);
  }

  private static boolean urgent(Verdict verdict) {
    return switch (verdict) {
      case DEAD, STALLED, LAGGING -> true;
      case HELD, EMPTY, PALE, AHEAD, ON_TRACK, NOT_TOLD -> false;
    };
  }

  private static String why(Verdict verdict, List<Judged> rows) {
    boolean one = rows.size() == 1;
    String count = one ? "It" : "They";
    return switch (verdict) {
      case DEAD -> count + (one ? " has" : " have") + " lost the leaf seen before, or it is brown.";
      case EMPTY -> count + (one ? " is" : " are") + " planted, but no leaf shows.";
      case STALLED -> count + (one ? " has" : " have") + " all but stopped growing." + at(rows);
      case LAGGING -> count + (one ? " lags" : " lag") + "." + at(rows);
      case PALE -> count + (one ? " is" : " are") + " paler than the other plants of this age.";
      case AHEAD ->
          count
              + (one ? " is" : " are")
              + " far ahead: bolting, or two plants in a hole?"
              + at(rows);
      case HELD, ON_TRACK, NOT_TOLD -> "";
    };
  }

  private static String at(List<Judged> rows) {
    double[] shares =
        rows.stream()
            .flatMap(r -> r.share().stream())
            .mapToDouble(s -> 100 * s.shareOfExpected())
            .sorted()
            .toArray();
    if (shares.length == 0) {
      return "";
    }
    String lo = String.format(Locale.ROOT, "%.0f", shares[0]);
    String hi = String.format(Locale.ROOT, "%.0f", shares[shares.length - 1]);
    String basis =
        rows.stream()
            .flatMap(r -> r.share().stream())
            .map(s -> s.basis().words())
            .distinct()
            .collect(Collectors.joining(" or "));
    return " Leaf area: about "
        + (lo.equals(hi) ? lo : lo + " to " + hi)
        + (rows.size() == 1
            ? " % of what is expected at its age"
            : " % of what is expected at their age")
        + " (judging by "
        + basis
        + ").";
  }

  private Task task(int priority, Task.Where where, String why, String item) {
    return new Task(Action.INSPECT, priority, where, why, Optional.of(tonight.tomorrow()), item);
  }
}
