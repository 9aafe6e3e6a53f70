// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.marker.FindTags;
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
   * @param photos the run's photos, settled
   * @param evening the same and the history's photos of their evenings
   * @param farm the book
   * @return the photos with the rows of their rafts; a photo that shows a raft that no planting
   *     explains says so
   */
  static Collected collect(List<Settled> photos, List<Settled> evening, Farm farm) {
    Repeatability repeatability = new Repeatability(evening, farm);
    List<Settled> said = new ArrayList<>();
    List<RaftRows> rows = new ArrayList<>();
    List<RaftRows> strangers = new ArrayList<>();
    List<Unassigned> unassigned = new ArrayList<>();
    for (Settled settled : photos) {
      List<Unassigned> here = new ArrayList<>();
      for (int place = 0; place < settled.rafts().size(); place++) {
        Optional<RaftMeasure> raft = inTables(settled, place);
        if (raft.isPresent()) {
          Optional<Unassigned> stranger = unassigned(settled.photo(), raft.get(), farm);
          (stranger.isPresent() ? strangers : rows)
              .add(new OneRaft(settled.photo(), raft.get(), farm).rows(stranger, repeatability));
          stranger.filter(s -> raft.get().held().isEmpty()).ifPresent(here::add);
        }
      }
      said.add(withSay(settled, here));
      unassigned.addAll(here);
    }
    return new Collected(said, rows, strangers, unassigned);
  }

  /** Returns a raft of a photo as it stands in the tables, or nothing where it does not. */
  private static Optional<RaftMeasure> inTables(Settled settled, int place) {
    if (!counts(settled.photo().status())) {
      return Optional.empty();
    }
    RaftMeasure raft = settled.photo().rafts().get(place);
    Settled.Outcome outcome = settled.rafts().get(place);
    return switch (outcome.kind()) {
      case HELD -> Optional.of(raft.withHeld(outcome.why()));
      case COUNTS -> Optional.of(raft);
      case REPLACED -> Optional.empty();
    };
  }

  private static boolean counts(PhotoStatus status) {
    return switch (status) {
      case USED, KNOWN, HELD -> true;
      case REPLACED, SKIPPED, REFUSED -> false;
    };
  }

  private static Settled withSay(Settled settled, List<Unassigned> here) {
    PhotoMeasure photo = settled.photo();
    for (Unassigned stranger : here) {
      photo =
          Rows.with(
              photo,
              new Say(
                  photo.status(),
                  Rows.joined(photo.reason(), "unassigned: " + stranger.why()),
                  Rows.joined(photo.remedy(), stranger.remedy())));
    }
    return new Settled(photo, settled.rafts());
  }

  /** The rows of one raft of a photo. */
  private record OneRaft(PhotoMeasure photo, RaftMeasure raft, Farm farm) {

    RaftRows rows(Optional<Unassigned> stranger, Repeatability repeatability) {
      List<SiteRow> sites = new ArrayList<>();
      for (SiteMeasure site : raft.sites()) {
        Optional<SitePlant> plant =
            stranger.isEmpty()
                ? farm.plantAt(
                    raft.raft().orElseThrow(), site.site(), photo.takenAt().orElseThrow())
                : Optional.empty();
        if (plant.isPresent() || stranger.isPresent()) {
          sites.add(new SiteRow(site, plant));
        }
      }
      String asked = stranger.map(s -> "unassigned: " + s.why() + "; " + s.remedy()).orElse("");
      String doubt = raft.held().isEmpty() ? asked : raft.held();
      return new RaftRows(photo, raft, sites, doubt, repeatability.ln(photo, raft));
    }
  }

  /** Says why no planting explains a raft, or nothing. */
  private static Optional<Unassigned> unassigned(PhotoMeasure photo, RaftMeasure raft, Farm farm) {
    if (raft.raft().isEmpty()) {
      Optional<String> tag =
          raft.notes().stream().filter(n -> n.startsWith(FindTags.TAG_TEXT)).findFirst();
      return Optional.of(
          new Unassigned(
              photo.photo(),
              raft.raft(),
              "nothing tells which raft this is" + tag.map(t -> ": " + t).orElse(""),
              tag.isPresent()
                  ? "print its tag anew with the id of plantings.csv, or name it in the manifest"
                  : NameOfRaft.where(farm.book())));
    }
    if (photo.takenAt().isEmpty()) {
      return Optional.of(
          new Unassigned(
              photo.photo(), raft.raft(), "nothing tells the evening", "give it in the manifest"));
    }
    LocalDate evening = farm.evening(photo.takenAt().get());
    return farm.plantingsOn(raft.raft().get(), evening).isEmpty()
        ? Optional.of(
            new Unassigned(
                photo.photo(),
                raft.raft(),
                "raft " + raft.raft().get() + " has no planting on " + evening,
                NameOfRaft.guess(raft.raft().get(), farm.book())
                    .map(NameOfRaft::remedy)
                    .orElse("mend plantings.csv")))
        : Optional.empty();
  }
}
