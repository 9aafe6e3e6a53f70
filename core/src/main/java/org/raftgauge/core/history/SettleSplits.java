// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Settles, look by look in the order of time, where the borders between plants run whose canopies
 * meet: by their sizes in the look before, as far as those are known better than the photo tells
 * them.
 *
 * <p>A photo judges a plant's size by the directions in which nothing stops it; of a plant that is
 * surrounded it sees little. The evening before, it stood freer. The two are weighed by their
 * errors, and so is what the settled area says of the plant's size from then on (a Kalman filter of
 * one number, ln of the radius); what all plants of a crop have grown meanwhile is taken out, and
 * each border moves by its own table ({@link Border}). A plant that is by far another size than
 * expected was cut, eaten, replaced or mistaken before: of it the photo is believed. Source: Kalman
 * 1960, J. Basic Eng. 82:35-45 (from memory).
 */
public final class SettleSplits {
  /** A plant alone of its crop has nothing to tell its growth from but itself. */
  private static final int LEAST_OF_CROP = 2;

  /** No plant gives away more than this share of what the photo alone gave it. */
  private static final double MOST_GIVEN = 0.7;

  /** No standard error falls below this share of the photo's own: what else it holds stays. */
  private static final double LEAST_SE = 0.5;

  private final Map<String, PlantSize> sizes = new HashMap<>();

  private SettleSplits() {}

  /**
   * One photo's measure of a raft, the right way round.
   *
   * @param raft the measure
   * @param at when it was taken
   * @param plants the plant at each planted site then, by site
   */
  public record Look(RaftMeasure raft, Instant at, Map<SiteId, Standing> plants) {

    /** Copies the plants. */
    public Look {
      plants = Map.copyOf(plants);
    }
  }

  /**
   * A plant at a site.
   *
   * @param plant its id
   * @param crop what it is: plants of one crop grow alike
   */
  public record Standing(String plant, String crop) {}

  /**
   * Settles the looks of one raft.
   *
   * @param looks in the order of time
   * @return the measures with their areas as settled, in the same order; held ones, and those whose
   *     plants do not meet or were not seen before, as they are
   */
  public static List<RaftMeasure> settle(List<Look> looks) {
    SettleSplits settle = new SettleSplits();
    return looks.stream().map(settle::next).toList();
  }

  private RaftMeasure next(Look look) {
    if (!look.raft().held().isEmpty()) {
      return look.raft();
    }
    Map<SiteId, SiteMeasure> seen = new HashMap<>();
    for (SiteMeasure site : look.raft().sites()) {
      if (site.projectedAreaCm2().orElse(0) > 0) {
        seen.put(site.site(), site);
      }
    }
    Map<SiteId, PlantSize> expected = expected(look, seen);
    Map<SiteId, Moved> moved = new HashMap<>();
    seen.keySet().forEach(site -> moved.put(site, new Moved()));
    List<Trade> trades = new ArrayList<>();
    for (Border border : look.raft().borders()) {
      if (seen.containsKey(border.site()) && seen.containsKey(border.neighbour())) {
        trades.add(trade(border, seen, expected));
      }
    }
    trades.forEach(trade -> moved.get(trade.giver()).givesCm2 += Math.abs(trade.takesCm2));
    trades.forEach(
        trade -> {
          double share = moved.get(trade.giver()).shareGiven(seen.get(trade.giver()));
          moved.get(trade.border.site()).add(share * trade.takesCm2, trade);
          moved.get(trade.border.neighbour()).add(-share * trade.takesCm2, trade);
        });
    List<SiteMeasure> sites = new ArrayList<>();
    for (SiteMeasure site : look.raft().sites()) {
      SiteMeasure now =
          moved.containsKey(site.site()) ? moved.get(site.site()).settled(site) : site;
      sites.add(now);
      keep(look, now, moved.get(site.site()), expected);
    }
    return look.raft().borders().isEmpty() ? look.raft() : look.raft().withSites(sites);
  }

  /**
   * Says how large plants should be by now that were seen before; those of them that this look does
   * not show grow on unseen.
   */
  private Map<SiteId, PlantSize> expected(Look look, Map<SiteId, SiteMeasure> seen) {
    Map<String, Double> usual = usualGrowth(look, seen);
    Map<SiteId, PlantSize> expected = new HashMap<>();
    look.plants()
        .forEach(
            (site, standing) -> {
              PlantSize size = sizes.get(standing.plant());
              Double growth = usual.get(standing.crop());
              if (size != null && growth != null) {
                PlantSize now = size.by(look.at(), growth);
                if (seen.containsKey(site)) {
                  PlantSize shown = PlantSize.of(seen.get(site), look.at(), 0);
                  expected.put(site, now.inLightOf(shown));
                } else {
                  sizes.put(standing.plant(), now);
                }
              }
            });
    return expected;
  }

  /** Says by how much of ln radius each crop has grown since the look before. */
  private Map<String, Double> usualGrowth(Look look, Map<SiteId, SiteMeasure> seen) {
    Map<String, List<Double>> grown = new HashMap<>();
    seen.forEach(
        (site, measure) -> {
          Standing standing = look.plants().get(site);
          PlantSize size = standing == null ? null : sizes.get(standing.plant());
          if (size != null) {
            grown
                .computeIfAbsent(standing.crop(), crop -> new ArrayList<>())
                .add(PlantSize.lnRadius(measure) - size.lnRadius());
          }
        });
    grown.values().removeIf(of -> of.size() < LEAST_OF_CROP);
    Map<String, Double> usual = new HashMap<>();
    grown.forEach((crop, of) -> usual.put(crop, median(of)));
    return usual;
  }

  private static double median(List<Double> values) {
    Collections.sort(values);
    return values.get(Math.floorDiv(values.size(), 2));
  }

  /**
   * What a border comes to.
   *
   * @param border the border
   * @param takesCm2 what its site takes from its neighbour, cm2 on the deck plane
   * @param varianceOfPhoto of what lies between them, as the photo alone tells it
   * @param variance the same now
   */
  private record Trade(Border border, double takesCm2, double varianceOfPhoto, double variance) {
    SiteId giver() {
      return takesCm2 > 0 ? border.neighbour() : border.site();
    }
  }

  private static Trade trade(
      Border border, Map<SiteId, SiteMeasure> seen, Map<SiteId, PlantSize> expected) {
    SiteMeasure site = seen.get(border.site());
    SiteMeasure neighbour = seen.get(border.neighbour());
    double photo = PlantSize.varianceOfRatio(site, neighbour);
    double variance = photo;
    double takes = 0;
    PlantSize a = expected.get(border.site());
    PlantSize b = expected.get(border.neighbour());
    if (a != null && b != null) {
      double before = a.variance() + b.variance();
      double weight = photo / (photo + before);
      variance = weight * before;
      double off = a.lnRadius() - b.lnRadius() - border.lnRatio();
      takes = border.takesCm2(border.lnRatio() + weight * off);
    }
    double slope = (border.taken().cm2(1) + border.given().cm2(1)) / 2 / Border.STEP;
    return new Trade(border, takes, slope * slope * photo, slope * slope * variance);
  }

  private void keep(Look look, SiteMeasure site, Moved moved, Map<SiteId, PlantSize> expected) {
    Standing standing = look.plants().get(site.site());
    if (moved != null && standing != null) {
      double cm2 = Math.sqrt(moved.variance) * site.parallaxFactor();
      PlantSize seen = PlantSize.of(site, look.at(), cm2 / site.projectedAreaCm2().orElseThrow());
      PlantSize before = expected.get(site.site());
      sizes.put(standing.plant(), before == null ? seen : before.with(seen));
    }
  }

  /**
   * What a plant is asked to give, and what moves to it, cm2 on the deck plane; the variances of
   * what borders leave open.
   */
  private static final class Moved {
    private double givesCm2;
    private double takesCm2;
    private double varianceOfPhoto;
    private double variance;

    private void add(double takes, Trade trade) {
      takesCm2 += takes;
      varianceOfPhoto += trade.varianceOfPhoto;
      variance += trade.variance;
    }

    /** Returns how much of what it was to give a plant gives. */
    private double shareGiven(SiteMeasure site) {
      double most = MOST_GIVEN * site.projectedAreaCm2().orElseThrow() / site.parallaxFactor();
      return givesCm2 > most ? most / givesCm2 : 1;
    }

    private SiteMeasure settled(SiteMeasure site) {
      if (takesCm2 == 0 && variance == varianceOfPhoto) {
        return site;
      }
      double se = site.projectedAreaSeCm2().orElseThrow();
      double factor = site.parallaxFactor();
      double less = (varianceOfPhoto - variance) * factor * factor;
      double left = Math.sqrt(Math.max(LEAST_SE * LEAST_SE * se * se, se * se - less));
      return site.moved(takesCm2 * factor, left);
    }
  }
}
