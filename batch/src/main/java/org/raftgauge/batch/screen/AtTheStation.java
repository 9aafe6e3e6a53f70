// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;

/** Decides what a person at the station is told of a photo. */
public final class AtTheStation {
  /** Parts of the reasons why photos and rafts are held or refused, and the words for them. */
  private static final Map<String, String> WORDS = new LinkedHashMap<>();

  static {
    WORDS.put("of the board is in the photo", "CUT OFF");
    WORDS.put("dark", "TOO DARK");
    WORDS.put("so coloured", "WHITE LIGHT");
    WORDS.put("no colour", "NO COLOUR");
    WORDS.put("mirrored", "MIRRORED");
    WORDS.put("no raft was found", "NO RAFT");
    WORDS.put("no board outline", "NO RAFT");
    WORDS.put("few marks", "CLEAN MARKERS");
    WORDS.put("no marker", "CLEAN MARKERS");
    WORDS.put("says raft", "WHICH RAFT");
    WORDS.put("is not that of the planting", "WHICH RAFT");
    WORDS.put("not the same shape", "WRONG CAMERA");
    WORDS.put("at which station", "WHICH STATION");
    WORDS.put("no usable station", "WHICH STATION");
    WORDS.put("when the photo was taken", "SET CLOCK");
    WORDS.put("camera has moved", "CAMERA MOVED");
    WORDS.put("camera may have moved", "CAMERA MOVED");
    WORDS.put("turned by half a turn", "TURN RAFT");
  }

  private static final String OTHERWISE = "TAKE AGAIN";

  private AtTheStation() {}

  /**
   * Decides.
   *
   * @param photo what was measured
   * @param planted says whether something is planted on a raft on the photo's evening
   * @return what is told
   */
  public static Signal of(PhotoMeasure photo, BiPredicate<String, PhotoMeasure> planted) {
    if (photo.status() == PhotoStatus.SKIPPED
        || photo.status() == PhotoStatus.REFUSED
        || photo.status() == PhotoStatus.HELD) {
      return again(photo.reason(), photo.remedy());
    }
    Optional<RaftMeasure> held =
        photo.rafts().stream().filter(raft -> !raft.held().isEmpty()).findFirst();
    if (held.isPresent()) {
      return again(name(held.get()) + ": " + held.get().held(), photo.remedy());
    }
    for (RaftMeasure raft : photo.rafts()) {
      if (raft.raft().isEmpty()) {
        String slot = raft.slot().isEmpty() ? "" : " in slot " + raft.slot();
        return Signal.act(
            "WHICH RAFT",
            "nothing tells which raft lies" + slot + ": clean or replace its tag; take it again");
      }
      if (!planted.test(raft.raft().get(), photo)) {
        return Signal.act(
            "NOT IN BOOK",
            "raft " + raft.raft().get() + " has no planting: add it to plantings.csv");
      }
      if (raft.notes().contains(RaftMeasure.TAG_UNREAD)) {
        return Signal.act(
            "TAG UNREAD",
            "the name is taken for " + raft.raft().get() + ": clean the tag and take it again");
      }
    }
    return sites(photo);
  }

  /** Says good, or that many sites could not be measured. */
  private static Signal sites(PhotoMeasure photo) {
    long all = photo.rafts().stream().mapToLong(raft -> raft.sites().size()).sum();
    List<String> reasons =
        photo.rafts().stream()
            .flatMap(raft -> raft.sites().stream())
            .map(site -> site.held())
            .filter(why -> !why.isEmpty())
            .toList();
    String names = photo.rafts().stream().map(AtTheStation::name).collect(Collectors.joining(", "));
    if (2L * reasons.size() > all) {
      return again(names + ": " + reasons.size() + " sites held: " + reasons.get(0), "");
    }
    String some = reasons.isEmpty() ? "" : ", " + reasons.size() + " of them held";
    return Signal.good(names + ": " + all + (all == 1 ? " site" : " sites") + some);
  }

  private static Signal again(String reason, String remedy) {
    String word =
        WORDS.entrySet().stream()
            .filter(entry -> reason.contains(entry.getKey()))
            .map(Map.Entry::getValue)
            .findFirst()
            .orElse(OTHERWISE);
    return Signal.act(word, remedy.isEmpty() ? reason : reason + "; " + remedy);
  }

  private static String name(RaftMeasure raft) {
    return raft.raft().orElse("a raft without a name");
  }
}
