// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.CanopyRule;
import org.raftgauge.core.canopy.EvenedLight;
import org.raftgauge.core.canopy.OpenGround;
import org.raftgauge.core.canopy.SegmentCanopy;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.plane.DeckScale;
import org.raftgauge.core.plane.FoundBoard;
import org.raftgauge.core.plane.RectifyDeck;
import org.raftgauge.core.relief.HeightMap;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.Ground;
import org.raftgauge.core.site.MeasureSites;
import org.raftgauge.core.site.SiteCanopy;
import org.raftgauge.core.site.SiteMeasure;

/** Measures one board of a photo. */
final class MeasureBoard {
  /**
   * Glued markers and warped boards: a board's deck is no truer than this, mm (common practice, no
   * source).
   */
  private static final double LEAST_POSE_ERROR_MM = 0.3;

  /** Canopy is followed beyond the board's edge for this share of the pitch. */
  private static final double MARGIN_SHARE = 0.45;

  private final CropBook book;
  private final RgbImage image;
  private final double softPx;
  private final PhotoStory.Scene scene;
  private final SeenHeights heights;

  MeasureBoard(CropBook book, PhotoViews views, PhotoStory.Scene scene) {
    this.book = book;
    this.image = views.first();
    this.softPx = views.softPx();
    this.scene = scene;
    this.heights = SeenHeights.of(views, scene.station());
  }

  /**
   * What came of a board.
   *
   * @param raft its measure
   * @param remedy what to do where it is held, or empty
   * @param lightCast how coloured the light is, 0..1, where it was judged
   * @param drawing its parts in the photo
   * @param painting what to paint into the photo, where it was measured
   * @param rowsPx how far the rows of a pair of cameras lie apart over it, px, where told
   */
  record Outcome(
      RaftMeasure raft,
      String remedy,
      OptionalDouble lightCast,
      PhotoResult.RaftDrawing drawing,
      Optional<Painting> painting,
      OptionalDouble rowsPx) {}

  /** A board's canopy on its deck picture. */
  record Painting(
      FoundBoard board,
      DeckImage deck,
      Canopy canopy,
      SiteCanopy sites,
      Optional<HeightMap> heights) {}

  /** A board on its deck picture, with the light on it; nothing of it where it is held. */
  record Lit(FoundBoard board, DeckImage deck, EvenedLight light) {}

  /** Draws a board's deck and evens its light; held boards give nothing. */
  Optional<Lit> light(FoundBoard board) {
    if (!board.held().isEmpty()) {
      return Optional.empty();
    }
    DeckImage deck =
        RectifyDeck.rectify(image, board.pose(), board.layout().board(), scale(board))
            .soft(softPx * board.mmPerPx());
    EvenedLight light =
        onOpenGround(board)
            ? EvenedLight.ofCamera()
            : SegmentCanopy.evenLight(deck, board.layout());
    return Optional.of(new Lit(board, deck, light));
  }

  /** Measures a board that was found and lit, or says why it is held. */
  Outcome measure(FoundBoard board, WhoseBoard.Identity identity, Optional<Lit> lit) {
    String why = !identity.held().isEmpty() ? identity.held() : board.held();
    String remedy = !identity.held().isEmpty() ? identity.remedy() : "photograph it again";
    if (!why.isEmpty() || lit.isEmpty()) {
      return held(board, identity, new Doubt(why, remedy, OptionalDouble.empty()));
    }
    SiteCrops crops = SiteCrops.of(book, board.layout(), identity.raft(), scene);
    DeckImage deck = lit.get().deck();
    if (onOpenGround(board)) {
      return onOpenGround(lit.get(), identity, crops);
    }
    EvenedLight light = lit.get().light();
    OptionalDouble cast = OptionalDouble.of(1 - Math.exp(-light.cast()));
    if (light.greenStarvation() > CanopyRule.defaults().starvedGreen()) {
      return held(
          board,
          identity,
          new Doubt(
              "the light is so coloured that leaf and board cannot be told",
              "switch to white light for the photo",
              cast));
    }
    DeckLight level = DeckLight.of(deck);
    if (level.tooDark()) {
      return held(
          board,
          identity,
          new Doubt(
              "it is too dark to tell leaf from board",
              "give more light or a longer exposure",
              cast));
    }
    Canopy canopy = SegmentCanopy.on(deck, board.layout(), light, crops::modelAt);
    SeenHeights.OfBoard seen = heights.over(lit.get(), canopy);
    SiteCanopy sites = MeasureSites.of(ground(lit.get(), crops, seen), canopy);
    List<SiteMeasure> settled = RedBrown.settle(sites.sites(), crops.redSites());
    List<SiteMeasure> shown = CoveredHoles.hold(settled, deck, board.layout(), canopy);
    List<SiteMeasure> told = level.holdSmall(crops.holdDoubtful(shown, canopy));
    if (board.halfTurnKnown() && BesideHoles.stand(told, board.layout().grid())) {
      return held(
          board,
          identity,
          new Doubt(
              "the plants stand beside the planting holes of layout " + board.layout().name(),
              "see whether the camera was turned or mirrors, and whether the layout is this board's",
              cast));
    }
    Sites checked = new Sites(told, crops.rulerSites(), seen);
    return measured(new Painting(board, deck, canopy, sites, seen.map()), identity, checked, cast);
  }

  /** A slot with nothing to refine on shows no board: its plants stand on open ground. */
  boolean onOpenGround(FoundBoard board) {
    return scene.station().slots().stream()
        .filter(s -> board.slot().equals(Optional.of(s.name())))
        .anyMatch(s -> s.refine() == Slot.Refine.NONE);
  }

  private Outcome onOpenGround(Lit lit, WhoseBoard.Identity identity, SiteCrops crops) {
    Canopy canopy = OpenGround.on(lit.deck, crops::modelAt);
    SeenHeights.OfBoard seen = heights.over(lit, canopy);
    SiteCanopy sites = MeasureSites.of(ground(lit, crops, seen), canopy);
    Sites checked = new Sites(crops.holdUnknownGround(sites.sites()), crops.rulerSites(), seen);
    return measured(
        new Painting(lit.board, lit.deck, canopy, sites, seen.map()),
        identity,
        checked,
        OptionalDouble.empty());
  }

  private static Ground ground(Lit lit, SiteCrops crops, SeenHeights.OfBoard seen) {
    return new Ground(
        lit.deck,
        lit.board.layout(),
        lit.board.pose(),
        Math.hypot(lit.board.poseErrorMm(), LEAST_POSE_ERROR_MM),
        crops.heights(),
        crops.closedOutlines(),
        seen.map());
  }

  private Outcome measured(
      Painting painting, WhoseBoard.Identity identity, Sites checked, OptionalDouble cast) {
    FoundBoard board = painting.board;
    RaftMeasure raft =
        raft(
            board,
            identity,
            new Verdict(
                OptionalDouble.of(painting.sites.canopyCover()),
                OptionalDouble.of(painting.sites.leftoverCm2()),
                checked.sites,
                "",
                checked.byRuler,
                checked.seen.notes(checked.sites),
                painting.sites.borders()));
    return new Outcome(
        raft,
        "",
        cast,
        PhotoResult.RaftDrawing.of(board, painting.sites.plantCentres()),
        Optional.of(painting),
        checked.seen.rowsPx());
  }

  /** The checked sites, which of their heights are from a ruler, and what was seen of heights. */
  private record Sites(List<SiteMeasure> sites, List<SiteId> byRuler, SeenHeights.OfBoard seen) {}

  private record Doubt(String why, String remedy, OptionalDouble cast) {}

  private record Verdict(
      OptionalDouble cover,
      OptionalDouble leftover,
      List<SiteMeasure> sites,
      String held,
      List<SiteId> rulerSites,
      List<String> heightNotes,
      List<Border> borders) {}

  private Outcome held(FoundBoard board, WhoseBoard.Identity identity, Doubt doubt) {
    List<SiteMeasure> sites = new ArrayList<>();
    List<PointMm> centres = new ArrayList<>();
    for (SiteId site : board.layout().grid().sites()) {
      sites.add(SiteCrops.heldSite(site, doubt.why));
      centres.add(board.layout().grid().centre(site));
    }
    RaftMeasure raft =
        raft(
            board,
            identity,
            new Verdict(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                sites,
                doubt.why,
                List.of(),
                List.of(),
                List.of()));
    return new Outcome(
        raft,
        doubt.remedy,
        doubt.cast,
        PhotoResult.RaftDrawing.of(board, centres),
        Optional.empty(),
        OptionalDouble.empty());
  }

  private static RaftMeasure raft(FoundBoard board, WhoseBoard.Identity identity, Verdict verdict) {
    double quality = verdict.held.isEmpty() ? 1 / (1 + board.poseErrorMm() / 5) : 0;
    return new RaftMeasure(
        identity.raft(),
        board.slot().orElse(""),
        board.layout().name(),
        board.source(),
        board.poseErrorMm(),
        board.mmPerPx(),
        board.pose().heightMm(),
        board.halfTurnKnown(),
        verdict.cover,
        verdict.leftover,
        verdict.sites,
        quality,
        verdict.held,
        verdict.rulerSites,
        Stream.concat(WhoseBoard.notes(board).stream(), verdict.heightNotes.stream()).toList(),
        verdict.borders);
  }

  private static DeckScale scale(FoundBoard board) {
    Layout layout = board.layout();
    double pitch = Math.max(layout.grid().pitchXMm(), layout.grid().pitchYMm());
    double most = 0.1 * Math.max(layout.board().widthMm(), layout.board().lengthMm());
    return DeckScale.ofPhoto(board.pose(), layout.board(), Math.min(MARGIN_SHARE * pitch, most))
        .noFinerThan(NeededDetail.deckMmPerPx(layout));
  }
}
