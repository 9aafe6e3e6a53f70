// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.history.EveningRule;
import org.raftgauge.core.history.Shot;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;

/**
 * Settles which photo of a raft counts for an evening.
 *
 * <ul>
 *   <li>One photo: it counts.
 *   <li>Several: the best counts ({@link EveningRule}). The others are replaced and say by what.
 *   <li>The same id twice in one photo, or at two stations where rafts pass (no slots): two boards
 *       carry one id, so all of them are held.
 * </ul>
 *
 * Only used photos, and rafts that are not held already, take part.
 */
final class CountOnce {
  private static final String HELD_REMEDY =
      "see which board carries the wrong tag, put its raft id in the manifest and run again";

  private CountOnce() {}

  /**
   * Settles photos against each other.
   *
   * @param photos as measured, each of other bytes
   * @param evening the farm's day of a moment
   * @return what became of each, in the same order
   */
  static List<Settled> settle(
      List<PhotoMeasure> photos, Function<OffsetDateTime, LocalDate> evening) {
    Map<Look, Settled.Outcome> outcomes = new HashMap<>();
    for (List<Look> looks : byRaftAndEvening(photos, evening).values()) {
      if (looks.size() > 1) {
        outcomes.putAll(outcomes(looks));
      }
    }
    return photos.stream().map(photo -> settled(photo, outcomes)).toList();
  }

  private static Map<RaftEvening, List<Look>> byRaftAndEvening(
      List<PhotoMeasure> photos, Function<OffsetDateTime, LocalDate> evening) {
    Map<RaftEvening, List<Look>> groups = new HashMap<>();
    for (PhotoMeasure photo : photos) {
      for (int place = 0; place < photo.rafts().size(); place++) {
        Look look = new Look(photo, place);
        if (look.takesPart()) {
          LocalDate day = evening.apply(photo.takenAt().get());
          RaftEvening key = new RaftEvening(look.raft().raft().get(), day);
          groups.computeIfAbsent(key, k -> new ArrayList<>(1)).add(look);
        }
      }
    }
    return groups;
  }

  private record RaftEvening(String raft, LocalDate evening) {}

  private static Map<Look, Settled.Outcome> outcomes(List<Look> looks) {
    String conflict = conflict(looks);
    Look best = best(looks);
    return looks.stream()
        .collect(
            Collectors.toMap(
                look -> look,
                look -> {
                  if (!conflict.isEmpty()) {
                    return new Settled.Outcome(Settled.Kind.HELD, conflict);
                  }
                  return look.equals(best)
                      ? counts()
                      : new Settled.Outcome(Settled.Kind.REPLACED, better(best, look));
                }));
  }

  private static Look best(List<Look> looks) {
    Shot best = EveningRule.best(looks.stream().map(Look::shot).toList());
    return looks.stream()
        .filter(look -> look.shot().equals(best))
        .min(Comparator.comparing(look -> look.photo().sha256()))
        .orElseThrow();
  }

  /** Says why nobody can tell which of the boards is the raft, or nothing. */
  private static String conflict(List<Look> looks) {
    String raft = looks.get(0).raft().raft().orElseThrow();
    if (looks.stream().map(l -> l.photo().sha256()).distinct().count() < looks.size()) {
      return "raft id " + raft + " is on two boards of one photo";
    }
    List<String> stations =
        looks.stream()
            .filter(l -> l.raft().slot().isEmpty())
            .map(l -> l.photo().station())
            .distinct()
            .sorted()
            .toList();
    return stations.size() > 1
        ? "raft id " + raft + " was seen at " + String.join(" and ", stations) + " in one evening"
        : "";
  }

  private static String better(Look best, Look look) {
    return String.format(
        Locale.ROOT,
        "%s shows raft %s better that evening (quality %.2f, this one %.2f)",
        best.photo().photo(),
        look.raft().raft().orElseThrow(),
        best.raft().quality(),
        look.raft().quality());
  }

  private static Settled settled(PhotoMeasure photo, Map<Look, Settled.Outcome> outcomes) {
    List<Settled.Outcome> rafts = new ArrayList<>();
    for (int place = 0; place < photo.rafts().size(); place++) {
      rafts.add(outcomes.getOrDefault(new Look(photo, place), counts()));
    }
    return new Settled(withSay(photo, rafts), rafts);
  }

  private static PhotoMeasure withSay(PhotoMeasure photo, List<Settled.Outcome> rafts) {
    String why =
        rafts.stream()
            .map(Settled.Outcome::why)
            .filter(w -> !w.isEmpty())
            .distinct()
            .collect(Collectors.joining("; "));
    if (why.isEmpty()) {
      return photo;
    }
    boolean held = rafts.stream().anyMatch(r -> r.kind() == Settled.Kind.HELD);
    boolean counts = rafts.stream().anyMatch(r -> r.kind() == Settled.Kind.COUNTS);
    PhotoStatus without = held ? PhotoStatus.HELD : PhotoStatus.REPLACED;
    return Rows.with(
        photo,
        new Say(
            counts ? photo.status() : without,
            Rows.joined(photo.reason(), why),
            held ? HELD_REMEDY : photo.remedy()));
  }

  private static Settled.Outcome counts() {
    return new Settled.Outcome(Settled.Kind.COUNTS, "");
  }

  /** A raft of a photo. */
  private record Look(PhotoMeasure photo, int place) {

    RaftMeasure raft() {
      return photo.rafts().get(place);
    }

    Shot shot() {
      return Repeatability.shot(photo, raft());
    }

    boolean takesPart() {
      return photo.status() == PhotoStatus.USED
          && photo.takenAt().isPresent()
          && raft().raft().isPresent()
          && raft().held().isEmpty();
    }

    // The whole measure is a costly key; its bytes' hash says as much.
    @Override
    public boolean equals(Object other) {
      return other instanceof Look l && l.place == place && l.photo.sha256().equals(photo.sha256());
    }

    @Override
    public int hashCode() {
      return 31 * photo.sha256().hashCode() + place;
    }
  }
}
