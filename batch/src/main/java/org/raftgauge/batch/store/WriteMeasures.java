// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** Writes photos with their rafts and sites; the caller owns the transaction. */
final class WriteMeasures {
  private static final String PHOTO =
      "INSERT INTO photos (sha256, photo, settings, run, station, taken_at, clock_doubt, status,"
          + " reason, remedy, measured_status, measured_reason, measured_remedy, sharpness,"
          + " exposure_clipped_fraction, light_cast, shift_right_px, shift_down_px, turn_deg,"
          + " edge_blur_px, edge_blur_cells_px, haze_fraction, board_light, light_across_ln,"
          + " light_down_ln, vignetting_fraction, pair_rows_px, version, measuring_code)"
          + " VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)";
  private static final String RAFT =
      "INSERT INTO rafts (sha256, place, raft, slot, layout, pose_source, pose_error_mm, mm_per_px,"
          + " camera_height_mm, half_turn_known, canopy_cover, leftover_canopy_cm2, quality, held,"
          + " ruler_sites, notes, borders) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)";
  private static final String SITE =
      "INSERT INTO sites (sha256, place, site, projected_area_cm2, projected_area_se_cm2,"
          + " visible_area_cm2, closed, shared_outline_fraction, height_mm, parallax_factor,"
          + " equivalent_diameter_mm, largest_diameter_mm, perimeter_mm, solidity, offset_x_mm,"
          + " offset_y_mm, lab_l, lab_a, lab_b, pale_fraction, dead_fraction, quality, held,"
          + " height_seen_by, height_p95_mm, canopy_volume_cm3, height_seen_fraction)"
          + " VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)";

  private WriteMeasures() {}

  /**
   * Puts photos in the place of what is there of the same bytes; what other settings made is kept
   * as an earlier measure.
   */
  static void write(Connection database, List<Kept> photos) throws SQLException {
    try (PreparedStatement old = database.prepareStatement("DELETE FROM photos WHERE sha256 = ?");
        PreparedStatement photo = database.prepareStatement(PHOTO);
        PreparedStatement raft = database.prepareStatement(RAFT);
        PreparedStatement site = database.prepareStatement(SITE)) {
      SqlRow raftRow = new SqlRow(raft);
      SqlRow siteRow = new SqlRow(site);
      for (Kept kept : photos) {
        EarlierMeasures.keep(database, kept);
        new SqlRow(old).text(kept.measure().sha256()).write();
        photo(new SqlRow(photo), kept);
        for (int place = 0; place < kept.measure().rafts().size(); place++) {
          String sha256 = kept.measure().sha256();
          RaftMeasure measure = kept.measure().rafts().get(place);
          raft(raftRow.text(sha256).whole(place), measure);
          for (SiteMeasure each : measure.sites()) {
            site(siteRow.text(sha256).whole(place), each);
          }
        }
      }
    }
  }

  private static void photo(SqlRow row, Kept kept) throws SQLException {
    PhotoMeasure photo = kept.measure();
    String status = photo.status().name().toLowerCase(Locale.ROOT);
    row.text(photo.sha256())
        .text(photo.photo())
        .text(kept.origin().settings())
        .text(kept.origin().run())
        .text(photo.station())
        .text(photo.takenAt().map(Object::toString).orElse(null))
        .text(photo.clockDoubt())
        .text(status)
        .text(photo.reason())
        .text(photo.remedy())
        .text(status)
        .text(photo.reason())
        .text(photo.remedy())
        .number(photo.sharpness())
        .number(photo.exposureClippedFraction())
        .number(photo.lightCast());
    WitnessColumns.write(row, photo.witness());
    row.text(kept.origin().version()).text(kept.origin().measuringCode()).write();
  }

  private static void raft(SqlRow row, RaftMeasure raft) throws SQLException {
    row.text(raft.raft().orElse(null))
        .text(raft.slot())
        .text(raft.layout())
        .text(raft.poseSource().name().toLowerCase(Locale.ROOT))
        .number(raft.poseErrorMm())
        .number(raft.mmPerPx())
        .number(raft.cameraHeightMm())
        .flag(raft.halfTurnKnown())
        .number(raft.canopyCover())
        .number(raft.leftoverCanopyCm2())
        .number(raft.quality())
        .text(raft.held())
        .text(raft.rulerSites().stream().map(SiteId::toString).collect(Collectors.joining(";")))
        .text(String.join("\n", raft.notes()))
        .text(BorderText.of(raft.borders()))
        .write();
  }

  private static void site(SqlRow row, SiteMeasure site) throws SQLException {
    row.text(site.site().toString())
        .number(site.projectedAreaCm2())
        .number(site.projectedAreaSeCm2())
        .number(site.visibleAreaCm2())
        .flag(site.closed())
        .number(site.sharedOutlineFraction())
        .number(site.heightMm())
        .number(site.parallaxFactor())
        .number(shape(site, SiteMeasure.Shape::equivalentDiameterMm))
        .number(shape(site, SiteMeasure.Shape::largestDiameterMm))
        .number(shape(site, SiteMeasure.Shape::perimeterMm))
        .number(shape(site, SiteMeasure.Shape::solidity))
        .number(shape(site, SiteMeasure.Shape::offsetXMm))
        .number(shape(site, SiteMeasure.Shape::offsetYMm))
        .number(colour(site, SiteMeasure.Colour::labL))
        .number(colour(site, SiteMeasure.Colour::labA))
        .number(colour(site, SiteMeasure.Colour::labB))
        .number(colour(site, SiteMeasure.Colour::paleFraction))
        .number(colour(site, SiteMeasure.Colour::deadFraction))
        .number(site.quality())
        .text(site.held())
        .text(
            site.relief().stream()
                .map(r -> r.source().name().toLowerCase(Locale.ROOT))
                .findFirst()
                .orElse(""))
        .number(relief(site, SiteMeasure.Relief::p95Mm))
        .number(relief(site, SiteMeasure.Relief::volumeCm3))
        .number(relief(site, SiteMeasure.Relief::seenFraction))
        .write();
  }

  private static OptionalDouble relief(
      SiteMeasure site, ToDoubleFunction<SiteMeasure.Relief> part) {
    return site.relief().stream().mapToDouble(part).findFirst();
  }

  private static OptionalDouble shape(SiteMeasure site, ToDoubleFunction<SiteMeasure.Shape> part) {
    return site.shape().stream().mapToDouble(part).findFirst();
  }

  private static OptionalDouble colour(
      SiteMeasure site, ToDoubleFunction<SiteMeasure.Colour> part) {
    return site.colour().stream().mapToDouble(part).findFirst();
  }
}
