// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.SitePlant;
import org.raftgauge.core.report.SiteRow;
import org.raftgauge.core.site.SiteMeasure;

/** Joins measures with what the book says is planted: the rows of the tables. */
final class CollectRows {

  private CollectRows() {}

  /**
   * Collects the rafts of photos that count or are held.
   *
   * @param photos settled photos
   * @param farm the book
   * @return the photos with the rows of their rafts
   */
  static Collected collect(List<Settled> photos, Farm farm) {
    List<RaftRows> rows = new ArrayList<>();
    for (Settled settled : photos) {
      if (!counts(settled.photo().status())) {
        continue;
      }
      for (int place = 0; place < settled.rafts().size(); place++) {
        Settled.Outcome outcome = settled.rafts().get(place);
        RaftMeasure raft = settled.photo().rafts().get(place);
        if (outcome.kind() == Settled.Kind.HELD) {
          rows.add(raft(settled.photo(), Rows.held(raft, outcome.why()), farm));
        } else if (outcome.kind() == Settled.Kind.COUNTS) {
          rows.add(raft(settled.photo(), raft, farm));
        }
      }
    }
    return new Collected(photos, rows);
  }

  private static boolean counts(PhotoStatus status) {
    return switch (status) {
      case USED, KNOWN, HELD -> true;
      case REPLACED, SKIPPED, REFUSED -> false;
    };
  }

  private static RaftRows raft(PhotoMeasure photo, RaftMeasure raft, Farm farm) {
    String unassigned = unassigned(photo, raft, farm);
    List<SiteRow> sites = new ArrayList<>();
    for (SiteMeasure site : raft.sites()) {
      Optional<SitePlant> plant =
          unassigned.isEmpty()
              ? farm.plantAt(raft.raft().orElseThrow(), site.site(), photo.takenAt().orElseThrow())
              : Optional.empty();
      if (plant.isPresent() || !unassigned.isEmpty()) {
        sites.add(new SiteRow(site, plant));
      }
    }
    return new RaftRows(photo, raft, sites, raft.held().isEmpty() ? unassigned : raft.held());
  }

  /** Says why no planting explains a raft, or nothing. */
  private static String unassigned(PhotoMeasure photo, RaftMeasure raft, Farm farm) {
    if (raft.raft().isEmpty()) {
      return "unassigned: nothing tells which raft this is; name it in the manifest";
    }
    if (photo.takenAt().isEmpty()) {
      return "unassigned: nothing tells the evening";
    }
    LocalDate evening = farm.evening(photo.takenAt().get());
    return farm.plantingsOn(raft.raft().get(), evening).isEmpty()
        ? "unassigned: raft "
            + raft.raft().get()
            + " has no planting on "
            + evening
            + "; mend plantings.csv"
        : "";
  }
}
