// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.report.SitePlant;
import org.raftgauge.core.site.SiteMeasure;

/**
 * A raft of a photo.
 *
 * @param photo the photo
 * @param place of the raft in it
 */
record RaftPlace(PhotoMeasure photo, int place) {
  private static final Comparator<RaftPlace> IN_TIME =
      Comparator.comparing(RaftPlace::takenAt, OffsetDateTime.timeLineOrder())
          .thenComparing(p -> p.photo.photo())
          .thenComparing(p -> p.photo.sha256())
          .thenComparingInt(RaftPlace::place);

  /**
   * Gathers the looks at each raft.
   *
   * @param photos each of other bytes
   * @return the places of rafts with a name in photos that are used and dated, in the order of
   *     time, by raft
   */
  static TreeMap<String, List<RaftPlace>> byRaft(List<PhotoMeasure> photos) {
    TreeMap<String, List<RaftPlace>> byRaft = new TreeMap<>();
    for (PhotoMeasure photo : photos) {
      for (int place = 0; place < photo.rafts().size() && takesPart(photo); place++) {
        RaftPlace at = new RaftPlace(photo, place);
        Optional<String> raft = at.raft().raft();
        raft.ifPresent(r -> byRaft.computeIfAbsent(r, id -> new ArrayList<>()).add(at));
      }
    }
    byRaft.values().forEach(places -> places.sort(IN_TIME));
    return byRaft;
  }

  /** Says whether what a photo shows is compared with other photos at all. */
  static boolean takesPart(PhotoMeasure photo) {
    return photo.status() == PhotoStatus.USED && photo.takenAt().isPresent();
  }

  RaftMeasure raft() {
    return photo.rafts().get(place);
  }

  OffsetDateTime takenAt() {
    return photo.takenAt().orElseThrow();
  }

  /** Returns what stood at its planted sites then. */
  Map<SiteId, SitePlant> plants(Farm farm) {
    List<SiteId> sites = raft().sites().stream().map(SiteMeasure::site).toList();
    return farm.plantsOn(raft().raft().orElseThrow(), sites, takenAt());
  }

  // The whole measure is a costly key; its bytes' hash says as much.
  @Override
  public boolean equals(Object other) {
    return other instanceof RaftPlace p
        && p.place == place
        && p.photo.sha256().equals(photo.sha256());
  }

  @Override
  public int hashCode() {
    return 31 * photo.sha256().hashCode() + place;
  }
}
