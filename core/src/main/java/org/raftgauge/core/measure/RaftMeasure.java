// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.SiteMeasure;

/**
 * What one photo says of one raft.
 *
 * @param raft the raft's id; empty where nothing told it (unassigned)
 * @param slot the slot it lay in, or empty
 * @param layout name of its layout
 * @param poseSource what its place was found from
 * @param poseErrorMm standard error of a place on its deck, mm
 * @param mmPerPx deck mm per photo px at the board's centre
 * @param cameraHeightMm height of the camera over its deck plane, mm
 * @param halfTurnKnown whether the picture itself, or the station's set-up, tells its origin end;
 *     where not, the sites may be named from the wrong end until the second pass has settled it
 * @param canopyCover visible canopy inside the board's edge over board area, 0..1; absent where
 *     held
 * @param leftoverCanopyCm2 canopy that no site can own, cm2; absent where held
 * @param sites its sites in order, planted or not
 * @param quality 0 (useless) to 1
 * @param held why the whole raft is held, or empty
 * @param rulerSites sites whose canopy height is from a ruler, not from their crop's model
 * @param notes what was mended or left out in placing it: a camera that has moved, a board that
 *     lies turned, a marker out of line
 * @param borders where its plants' canopies meet
 */
public record RaftMeasure(
    Optional<String> raft,
    String slot,
    String layout,
    PoseSource poseSource,
    double poseErrorMm,
    double mmPerPx,
    double cameraHeightMm,
    boolean halfTurnKnown,
    OptionalDouble canopyCover,
    OptionalDouble leftoverCanopyCm2,
    List<SiteMeasure> sites,
    double quality,
    String held,
    List<SiteId> rulerSites,
    List<String> notes,
    List<Border> borders) {

  /** The note of a board whose tag could not be read. */
  public static final String TAG_UNREAD = "its tag was not read";

  /** Why a site is held whose planting's crop the book cannot tell. */
  public static final String NO_CROP = "the book has no usable crop for its planting";

  /** What a site's reason names where a look at the plant helps and another photo does not. */
  public static final String PLUG = "the plug of its hole";

  /** How the note begins of a raft over which a second camera told no heights. */
  public static final String HEIGHTS_BY_MODEL = "heights are from the crop's model: ";

  /** Copies the sites. */
  public RaftMeasure {
    sites = List.copyOf(sites);
    rulerSites = List.copyOf(rulerSites);
    notes = List.copyOf(notes);
    borders = List.copyOf(borders);
  }

  /**
   * Makes a measure of plants that do not meet, whose heights are all from models, with nothing to
   * note.
   *
   * @param raft the raft's id; empty where nothing told it
   * @param slot the slot it lay in, or empty
   * @param layout name of its layout
   * @param poseSource what its place was found from
   * @param poseErrorMm standard error of a place on its deck, mm
   * @param mmPerPx deck mm per photo px at the board's centre
   * @param cameraHeightMm height of the camera over its deck plane, mm
   * @param halfTurnKnown whether its origin end is known
   * @param canopyCover 0..1; absent where held
   * @param leftoverCanopyCm2 cm2; absent where held
   * @param sites its sites in order
   * @param quality 0 (useless) to 1
   * @param held why the whole raft is held, or empty
   */
  public RaftMeasure(
      Optional<String> raft,
      String slot,
      String layout,
      PoseSource poseSource,
      double poseErrorMm,
      double mmPerPx,
      double cameraHeightMm,
      boolean halfTurnKnown,
      OptionalDouble canopyCover,
      OptionalDouble leftoverCanopyCm2,
      List<SiteMeasure> sites,
      double quality,
      String held) {
    this(
        raft,
        slot,
        layout,
        poseSource,
        poseErrorMm,
        mmPerPx,
        cameraHeightMm,
        halfTurnKnown,
        canopyCover,
        leftoverCanopyCm2,
        sites,
        quality,
        held,
        List.of(),
        List.of(),
        List.of());
  }

  /**
   * Returns the same measure held.
   *
   * @param why the reason
   * @return the raft with the numbers of all its sites held back
   */
  public RaftMeasure withHeld(String why) {
    List<SiteMeasure> none = sites.stream().map(s -> held(s, why)).toList();
    return with(new Sites(OptionalDouble.empty(), OptionalDouble.empty(), none, List.of()), why);
  }

  private static SiteMeasure held(SiteMeasure site, String why) {
    return new SiteMeasure(
        site.site(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        false,
        0,
        site.heightMm(),
        site.parallaxFactor(),
        List.of(),
        List.of(),
        site.quality(),
        why);
  }

  /**
   * Returns the same measure with the sites named from the other end: half a turn.
   *
   * @return the raft with each site's measure at the site opposite, its offsets turned too
   */
  public RaftMeasure turned() {
    return TurnRaft.half(this);
  }

  /**
   * Returns the same measure with its canopy split otherwise between its plants.
   *
   * @param split its sites, in the same order
   */
  public RaftMeasure withSites(List<SiteMeasure> split) {
    return with(new Sites(canopyCover, leftoverCanopyCm2, split, borders), held);
  }

  /**
   * Returns the same measure as that of another raft.
   *
   * @param id the raft's id
   * @param note why, for {@link #notes()}
   */
  public RaftMeasure named(String id, String note) {
    return as(Optional.of(id), note);
  }

  /**
   * Returns the same measure with a note more.
   *
   * @param note what was mended
   */
  public RaftMeasure noted(String note) {
    return as(raft, note);
  }

  private RaftMeasure as(Optional<String> id, String note) {
    List<String> more = new ArrayList<>(notes);
    more.add(note);
    return new RaftMeasure(
        id,
        slot,
        layout,
        poseSource,
        poseErrorMm,
        mmPerPx,
        cameraHeightMm,
        halfTurnKnown,
        canopyCover,
        leftoverCanopyCm2,
        sites,
        quality,
        held,
        rulerSites,
        more,
        borders);
  }

  /** What a board's canopy comes to. */
  record Sites(
      OptionalDouble cover,
      OptionalDouble leftover,
      List<SiteMeasure> measures,
      List<Border> borders) {}

  RaftMeasure with(Sites now, String why) {
    return new RaftMeasure(
        raft,
        slot,
        layout,
        poseSource,
        poseErrorMm,
        mmPerPx,
        cameraHeightMm,
        halfTurnKnown,
        now.cover,
        now.leftover,
        now.measures,
        quality,
        why,
        rulerSites,
        notes,
        now.borders);
  }
}
