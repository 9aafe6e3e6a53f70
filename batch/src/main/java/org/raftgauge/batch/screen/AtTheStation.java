// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** Decides what a person at the station is told of a photo. */
public final class AtTheStation {
  private static final String TOO_DARK = "TOO DARK";

  /** Parts of the reasons why photos and rafts are held or refused, and the words for them. */
  private static final Map<String, String> WORDS = new LinkedHashMap<>();

  static {
    WORDS.put("of the board is in the photo", "CUT OFF");
    WORDS.put("dark", TOO_DARK);
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

  /** Knows what stands on a raft. */
  public interface Planted {
    /**
     * Finds the planted sites.
     *
     * @param raft the raft, whose name is known
     * @param photo of which evening
     * @return those of its sites that hold a plant; nothing where the raft has no planting
     */
    Optional<Set<SiteId>> sites(RaftMeasure raft, PhotoMeasure photo);
  }

  /**
   * Decides.
   *
   * @param photo what was measured
   * @param planted knows what stands on a raft
   * @return what is told
   */
  public static Signal of(PhotoMeasure photo, Planted planted) {
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
    List<SiteMeasure> sites = new ArrayList<>();
    for (RaftMeasure raft : photo.rafts()) {
      if (raft.raft().isEmpty()) {
        String slot = raft.slot().isEmpty() ? "" : " in slot " + raft.slot();
        return Signal.act(
            "WHICH RAFT",
            "nothing tells which raft lies" + slot + ": clean or replace its tag; take it again");
      }
      Optional<Set<SiteId>> plants = planted.sites(raft, photo);
      if (plants.isEmpty()) {
        return Signal.act(
            "NOT IN BOOK",
            "raft " + raft.raft().get() + " has no planting: add it to plantings.csv");
      }
      if (raft.notes().contains(RaftMeasure.TAG_UNREAD)) {
        return Signal.act(
            "TAG UNREAD",
            "measured as "
                + raft.raft().get()
                + ", by its file's name or the manifest: go on if that is right; else lift the"
                + " leaves off its tag, or clean it, and take it again");
      }
      raft.sites().stream().filter(s -> plants.get().contains(s.site())).forEach(sites::add);
    }
    String names = photo.rafts().stream().map(AtTheStation::name).collect(Collectors.joining(", "));
    return sites(names, sites);
  }

  /**
   * Says good, or that many planted sites could not be measured, or any for want of light, which
   * can be mended while the raft is still there.
   */
  private static Signal sites(String names, List<SiteMeasure> planted) {
    int all = planted.size();
    List<String> reasons =
        planted.stream().map(SiteMeasure::held).filter(why -> !why.isEmpty()).toList();
    Optional<String> dark = reasons.stream().filter(why -> word(why).equals(TOO_DARK)).findFirst();
    if (dark.isPresent() || 2 * reasons.size() > all) {
      String why = dark.orElse(reasons.get(0));
      return again(names + ": " + reasons.size() + " of " + all + " sites held: " + why, "");
    }
    String some = reasons.isEmpty() ? "" : ", " + reasons.size() + " of them held";
    return Signal.good(names + ": " + all + (all == 1 ? " site" : " sites") + some);
  }

  private static Signal again(String reason, String remedy) {
    return Signal.act(word(reason), remedy.isEmpty() ? reason : reason + "; " + remedy);
  }

  private static String word(String reason) {
    return WORDS.entrySet().stream()
        .filter(entry -> reason.contains(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(OTHERWISE);
  }

  private static String name(RaftMeasure raft) {
    return raft.raft().orElse("a raft without a name");
  }
}
