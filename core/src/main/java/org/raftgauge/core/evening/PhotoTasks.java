// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Task.Action;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Pattern;
import org.raftgauge.core.track.Verdict;

/** Finds what there is to do about photos, stations and tags. */
final class PhotoTasks {
  /** Evenings running on which a tag is not read before it is asked for. */
  private static final int TAG_EVENINGS = 3;

  private final Tonight tonight;
  private final SeenItems seen;

  PhotoTasks(Tonight tonight, SeenItems seen) {
    this.tonight = tonight;
    this.seen = seen;
  }

  /** Stations in doubt: by their own signs, and where all their plants step at once. */
  List<Task> stations() {
    Map<String, String> why = new TreeMap<>();
    for (StationDoubt doubt : tonight.stations()) {
      why.put(doubt.station(), why(doubt));
    }
    for (Judged row : tonight.verdicts()) {
      if (row.scope() == Judged.Scope.STATION) {
        why.merge(row.place().station(), sentence(row.evidence()), (a, b) -> a + " " + b);
      }
    }
    List<Task> tasks = new ArrayList<>();
    why.forEach(
        (station, text) -> {
          String item = Item.ofEvening("station", station, tonight.evening());
          if (!seen.hidesEvening(item)) {
            tasks.add(
                photo(Action.CHECK_THE_STATION, Task.Where.ofStation(station), text).apply(item));
          }
        });
    return tasks;
  }

  private String why(StationDoubt doubt) {
    long held =
        tonight.looks().stream()
            .filter(look -> look.station().equals(doubt.station()) && heldByStation(look.held()))
            .count();
    String rafts = held == 0 ? "" : " Its photos of this evening are held, rafts: " + held + ".";
    return sentence(doubt.finding()) + " " + sentence(doubt.remedy()) + rafts;
  }

  /** Says whether something is held for its station's sake: the station's own row says so. */
  private static boolean heldByStation(String why) {
    return why.contains(StationDoubt.HELD);
  }

  /** Rafts that were expected tonight and are on no photo. */
  List<Task> notSeen() {
    Map<String, LocalDate> last = new TreeMap<>();
    tonight
        .seen()
        .rafts()
        .forEach(
            look -> last.merge(look.raft(), tonight.evening(look), (a, b) -> a.isAfter(b) ? a : b));
    Set<String> rafts = new TreeSet<>(tonight.book().expectedRafts(tonight.evening()));
    rafts.removeAll(tonight.photographed());
    List<Task> tasks = new ArrayList<>();
    for (String raft : rafts) {
      String item = Item.ofEvening("photograph", raft, tonight.evening());
      if (!seen.hidesEvening(item)) {
        String since =
            Optional.ofNullable(last.get(raft))
                .map(day -> "Last seen on " + day + lookAt(raft) + ".")
                .orElse("Never seen.");
        tasks.add(
            photo(Action.PHOTOGRAPH_AT_ALL, tonight.whole(raft), "Expected, not seen. " + since)
                .apply(item));
      }
    }
    return tasks;
  }

  /** Names the sites of a raft that were amiss when it was last seen. */
  private String lookAt(String raft) {
    Map<Verdict, List<String>> sites = new TreeMap<>();
    for (Judged row : tonight.said().before()) {
      boolean amiss = !row.verdict().isCalm() && row.verdict() != Verdict.HELD;
      if (row.place().raft().equals(raft) && amiss) {
        sites
            .computeIfAbsent(row.verdict(), v -> new ArrayList<>())
            .add(row.place().site().orElseThrow().toString());
      }
    }
    String words =
        sites.entrySet().stream()
            .map(e -> e.getKey().word() + " " + String.join(", ", e.getValue()))
            .collect(Collectors.joining("; "));
    return words.isEmpty() ? "" : Task.AMISS + words;
  }

  /** What was photographed and cannot be judged: another photo helps, or a look at the plants. */
  List<Task> again() {
    Map<String, Map<String, Set<SiteId>>> held = new TreeMap<>();
    for (Judged row : tonight.verdicts()) {
      boolean doubted = row.verdict() == Verdict.HELD && row.pattern() != Pattern.STATION;
      boolean byPhoto = !heldByStation(row.evidence()) && !BookTasks.isHeldByBook(row);
      if (row.scope() == Judged.Scope.SITE && doubted && byPhoto) {
        sites(held, row.place().raft(), row.evidence()).add(row.place().site().orElseThrow());
      }
    }
    for (RaftLook look : tonight.looks()) {
      if (!look.held().isEmpty() && !heldByStation(look.held())) {
        sites(held, look.raft(), look.held());
      }
    }
    List<Task> tasks = new ArrayList<>();
    held.forEach(
        (raft, reasons) ->
            reasons.forEach((why, s) -> again(raft, "Held: " + sentence(why), s, tasks)));
    doubted().forEach((raft, why) -> again(raft, sentence(why), Set.of(), tasks));
    return tasks;
  }

  /** Rafts that were measured tonight though something speaks against it. */
  private Map<String, String> doubted() {
    Map<String, String> doubted = new TreeMap<>();
    tonight.looks().stream()
        .filter(look -> look.held().isEmpty() && !look.doubt().isEmpty())
        .forEach(look -> doubted.put(look.raft(), look.doubt()));
    return doubted;
  }

  private static Set<SiteId> sites(
      Map<String, Map<String, Set<SiteId>>> held, String raft, String why) {
    return held.computeIfAbsent(raft, r -> new TreeMap<>())
        .computeIfAbsent(why, w -> new TreeSet<>());
  }

  private void again(String raft, String why, Set<SiteId> sites, List<Task> tasks) {
    boolean look = why.contains(RaftMeasure.PLUG);
    Action action = look ? Action.INSPECT : Action.PHOTOGRAPH_AGAIN;
    String kind = look ? "inspect-held" : "photograph-again";
    String item = Item.ofEvening(kind, raft, tonight.evening());
    if (!seen.hidesEvening(item)) {
      long planted =
          tonight.seenTonight().stream().filter(s -> s.last().raft().equals(raft)).count();
      List<SiteId> named = sites.size() >= planted ? List.of() : List.copyOf(sites);
      tasks.add(photo(action, tonight.at(raft, named), why).apply(item));
    }
  }

  private interface Named {
    Task apply(String item);
  }

  private Named photo(Action action, Task.Where where, String why) {
    return item -> new Task(action, 1, where, why, Optional.of(tonight.tomorrow()), item);
  }

  /** Tags that were not read on their last three evenings, tonight among them. */
  List<Task> tags() {
    Map<String, Map<LocalDate, Boolean>> unread = new TreeMap<>();
    for (RaftLook look : tonight.seen().rafts()) {
      unread
          .computeIfAbsent(look.raft(), r -> new TreeMap<>())
          .merge(tonight.evening(look), look.tag() == RaftLook.Tag.UNREAD, Boolean::logicalAnd);
    }
    List<Task> tasks = new ArrayList<>();
    for (String raft : tonight.photographed()) {
      List<Boolean> evenings = List.copyOf(unread.get(raft).values());
      int n = evenings.size();
      boolean lost = n >= TAG_EVENINGS && !evenings.subList(n - TAG_EVENINGS, n).contains(false);
      String item = Item.ofRaft("tag", raft, tonight.cycle(raft));
      if (lost && !seen.hides(item)) {
        tasks.add(
            new Task(
                Action.REPLACE_TAG,
                3,
                tonight.whole(raft),
                "It was not read on the last three evenings. Clean it, free it of leaves, or"
                    + " print a new one.",
                Optional.empty(),
                item));
      }
    }
    return tasks;
  }

  /** Writes a finding as a sentence. */
  static String sentence(String finding) {
    String text = finding.strip();
    if (text.isEmpty()) {
      return "";
    }
    return Character.toUpperCase(text.charAt(0))
        + text.substring(1)
        + (text.endsWith(".") ? "" : ".");
  }
}
