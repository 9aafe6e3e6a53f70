// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.canopy.LightSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * The crop at each site of a board: sites that no planting holds follow the board's first crop, a
 * board without any is green leaf.
 */
final class SiteCrops {
  /**
   * The provisional red-leaf model is not believed where more than this share of a canopy lies near
   * its threshold.
   */
  private static final double MOST_DOUBT = 0.5;

  private static final HeightModel FLAT = new HeightModel(0, 0, 0.5);

  private final SiteGrid grid;
  private final List<Optional<Crop>> crops;
  private final BitSet unknownCrop;
  private final Map<String, Optional<LeafModel>> models;
  private final Map<SiteId, Double> topMm;

  private SiteCrops(
      SiteGrid grid, List<Optional<Crop>> crops, BitSet unknownCrop, Map<SiteId, Double> topMm) {
    this.unknownCrop = unknownCrop;
    this.grid = grid;
    this.crops = List.copyOf(crops);
    this.topMm = topMm;
    this.models =
        this.crops.stream()
            .flatMap(Optional::stream)
            .collect(
                Collectors.toMap(Crop::colourModel, SiteCrops::model, (first, again) -> first));
  }

  /** Finds or compiles a crop's colour model; nothing where its book has no such model. */
  private static Optional<LeafModel> model(Crop crop) {
    return LeafModel.named(crop.colourModel()).or(() -> crop.taught().map(LeafModel::taught));
  }

  static SiteCrops of(CropBook book, Layout layout, Optional<String> raft, PhotoStory.Scene scene) {
    List<Planting> plantings =
        raft.map(r -> book.plantingsOn(r, scene.evening())).orElse(List.of());
    BitSet unknown = new BitSet();
    Optional<Crop> first = plantings.stream().findFirst().flatMap(book::crop);
    List<Optional<Crop>> crops = new ArrayList<>();
    for (SiteId site : layout.grid().sites()) {
      Optional<Planting> planting = plantings.stream().filter(p -> p.holds(site)).findFirst();
      Optional<Crop> crop = planting.flatMap(book::crop);
      unknown.set(crops.size(), planting.isPresent() && crop.isEmpty());
      crops.add(crop.or(() -> first));
    }
    Map<SiteId, Double> topMm =
        raft.map(r -> RulerHeights.topMm(book, r, scene.at())).orElse(Map.of());
    return new SiteCrops(layout.grid(), crops, unknown, topMm);
  }

  /** Returns the height of each site: by a ruler where there is one, else by its crop's model. */
  List<HeightModel> heights() {
    List<HeightModel> heights = new ArrayList<>();
    for (int s = 0; s < crops.size(); s++) {
      HeightModel model = crops.get(s).map(Crop::heightModel).orElse(FLAT);
      Optional<Double> top = Optional.ofNullable(topMm.get(grid.sites().get(s)));
      heights.add(top.map(t -> constant(t, model.meanToTop())).orElse(model));
    }
    return heights;
  }

  /** Returns the sites whose height a ruler gave. */
  List<SiteId> rulerSites() {
    return List.copyOf(topMm.keySet());
  }

  /** Returns the model of a plant whose height is known, whatever its area. */
  private static HeightModel constant(double topMm, double meanToTop) {
    return new HeightModel(topMm * meanToTop, 0, meanToTop);
  }

  List<Double> closedOutlines() {
    return crops.stream()
        .map(c -> c.map(Crop::limits).orElse(Crop.Limits.defaults()).closedOutline())
        .toList();
  }

  /** Returns the colour model of the site nearest to a place. */
  LeafModel modelAt(PointMm place) {
    int row =
        clamp((int) Math.round((place.yMm() - grid.firstYMm()) / grid.pitchYMm()), grid.rows());
    double shift = row % 2 == 1 ? grid.staggerXMm() : 0;
    int column =
        clamp(
            (int) Math.round((place.xMm() - grid.firstXMm() - shift) / grid.pitchXMm()),
            grid.columns());
    return model(row * grid.columns() + column).orElse(LeafModel.GREEN_LEAF);
  }

  private static int clamp(int i, int n) {
    return Math.max(0, Math.min(n - 1, i));
  }

  private Optional<LeafModel> model(int site) {
    return crops.get(site).isEmpty()
        ? Optional.of(LeafModel.GREEN_LEAF)
        : models.get(crops.get(site).get().colourModel());
  }

  /**
   * Holds the sites whose colour model is not known, and leaf that is hard to tell from what is
   * about it.
   */
  List<SiteMeasure> holdDoubtful(List<SiteMeasure> sites, Canopy canopy) {
    List<SiteMeasure> checked = new ArrayList<>();
    for (int s = 0; s < sites.size(); s++) {
      String why = doubt(s, canopy);
      checked.add(why.isEmpty() ? sites.get(s) : heldSite(sites.get(s).site(), why));
    }
    return checked;
  }

  /** Returns why a site's leaf cannot be told, and what to do; empty where it can. */
  private String doubt(int s, Canopy canopy) {
    Optional<LeafModel> model = model(s);
    if (unknownCrop.get(s)) {
      return RaftMeasure.NO_CROP;
    }
    if (model.isEmpty()) {
      return "no colour model \""
          + crops.get(s).orElseThrow().colourModel()
          + "\"; mend colour_model in crops.yaml, or the model's file in the book's colour folder";
    }
    boolean red = model.get() == LeafModel.RED_LEAF;
    if (red && canopy.doubtFraction() > MOST_DOUBT) {
      return "red leaf and board are hard to tell apart; photograph it in brighter white light, or"
          + " teach a colour model";
    }
    if (red && canopy.light().source() != LightSource.BOARD) {
      return "no board shows that red leaf could be told from; teach a colour model";
    }
    if (red && canopy.fillsHole(s)) {
      return "red leaf and "
          + RaftMeasure.PLUG
          + " are hard to tell apart; look at it, or teach a colour model";
    }
    return canopy.isPlugLike(s)
        ? "leaf and "
            + RaftMeasure.PLUG
            + " look alike; look at it, clean a mossy plug, or teach a colour model"
        : "";
  }

  /** Returns the places of the sites of red leaf. */
  BitSet redSites() {
    BitSet red = new BitSet();
    for (int s = 0; s < crops.size(); s++) {
      red.set(s, model(s).filter(LeafModel.RED_LEAF::equals).isPresent());
    }
    return red;
  }

  /** Holds the sites whose colour model does not know what leaf on open ground looks like. */
  List<SiteMeasure> holdUnknownGround(List<SiteMeasure> sites) {
    List<SiteMeasure> checked = new ArrayList<>();
    for (int s = 0; s < sites.size(); s++) {
      checked.add(
          model(s).filter(LeafModel::knowsOpenGround).isPresent()
              ? sites.get(s)
              : heldSite(
                  sites.get(s).site(),
                  "on open ground only green leaf, and leaf that a model was taught there, is told"
                      + " from what is about it"));
    }
    return checked;
  }

  static SiteMeasure heldSite(SiteId site, String why) {
    return new SiteMeasure(
        site,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        false,
        0,
        0,
        1,
        List.of(),
        List.of(),
        0,
        why);
  }
}
