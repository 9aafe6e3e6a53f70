// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * How plants grew together over the last evenings, held against zero and against what their own
 * evenings before foretold.
 *
 * @param since the last evening before, as a day number
 * @param evenings evenings since then
 * @param days days since then
 * @param rate growth rate since then, 1/day; below 0 where they shrink
 * @param rateSd its error: of photos alone
 * @param rateBefore on the evenings before, 1/day
 * @param rateForetold since then, as ageing leaves of it, 1/day
 * @param share of the foretold growth that there was
 * @param shareSd its error
 * @param recentShare of the foretold rate over the last few of these evenings
 * @param chance of so little growth in healthy plants, weather and all
 */
record Slowing(
    double since,
    int evenings,
    double days,
    double rate,
    double rateSd,
    double rateBefore,
    double rateForetold,
    double share,
    double shareSd,
    double recentShare,
    double chance) {

  /** Evenings that tell how plants grew before; fewer tell no usual growth. */
  static final int FEWEST_BEFORE = 5;

  private static final int MOST_BEFORE = 10;

  /** How many of the last evenings are held against those before. */
  private static final int[] WINDOWS = {2, 3, 4, 5, 6, 8, 10, 14};

  /**
   * Most evenings of a pond of healthy plants, of a thousand, on which slow growth may be believed:
   * five, shared out among the windows (Bonferroni).
   */
  private static final double FALSE_CALLS = 0.005;

  /**
   * How many of the windows count as tests of their own: they lie within each other, and one twice
   * as long as another is mostly new.
   */
  private static final int WINDOWS_APART = 3;

  /**
   * Growth that is more than a third down for some days is what a cloudy week does to it (common
   * practice, no source): not called.
   */
  private static final double CLOUDY = 0.6;

  /** Growth that has recently come back to this share is no longer called. */
  private static final double BACK = 0.75;

  /**
   * Rate under which healthy plants are near their final size, 1/day: what they do then is not told
   * from a stop. Leafy crops still grow by 5 % a day and more when they are harvested (common
   * practice, no source).
   */
  private static final double FULL_GROWN = 0.04;

  /** Loss of leaf that is told of full grown plants too, ln(area), and how sure it must be. */
  private static final double WILTED = 0.1;

  private static final double SURE = 3.5;

  /**
   * What is found must not rest on one evening, whose photo of a raft may be off by far more than
   * usual: chance that is still allowed where any one is left out. A working value.
   */
  private static final double CREDIBLE_WITHOUT = 0.05;

  private static final double ALL_BUT_STOPPED = 0.25;
  private static final double SURELY_STOPPED = 0.5;
  private static final double NORMAL_95 = 1.6448536269514722;
  private static final int RECENT = 4;

  /**
   * Kinds of noise that are thought possible, alike: photos of an evening that err together by 1 to
   * 4 %, days whose growth is off by 6 to 25 % of it (working values). Which of them, the evenings
   * before tell.
   */
  private static final List<GrowthForetold.Noise> NOISE =
      DoubleStream.of(0.01, 0.02, 0.04)
          .boxed()
          .flatMap(
              evening ->
                  Stream.of(0.06, 0.12, 0.25).map(day -> new GrowthForetold.Noise(evening, day)))
          .toList();

  /**
   * What is known of plants besides their own evenings.
   *
   * @param yardstick past cycles or the book's curve, where there are any
   * @param harvest age at which they are first harvested, days, where the book says it
   * @param groups groups of plants of a pond that are asked: each has its share of false calls
   */
  record Known(Optional<Yardstick> yardstick, OptionalDouble harvest, int groups) {
    private List<Ageing.Weighted> ways(double origin) {
      return Ageing.ways(origin, yardstick, harvest);
    }
  }

  /** What is to be said of it. */
  enum Kind {
    /** Leaf is credibly lost. */
    SHRINKS,
    /** Growth is credibly less than half of the foretold, and hardly any. */
    STOPPED,
    /** Growth is credibly less than the foretold, by more than a third. */
    SLOWED;

    /** Returns what is said of the pond. */
    Verdict verdict() {
      return this == SLOWED ? Verdict.LAGGING : Verdict.STALLED;
    }
  }

  /**
   * Finds the stretch of evenings up to the last on which growth least fits those before.
   *
   * @param points evenings in order
   * @param kind what is known of such plants
   * @return what is credibly slow growth, or nothing
   */
  static Optional<Slowing> of(List<CommonGrowth.Point> points, Known kind) {
    double credible = FALSE_CALLS / WINDOWS_APART / kind.groups();
    List<Slowing> found = new ArrayList<>();
    for (int window : WINDOWS) {
      int last = points.size() - window;
      if (last >= FEWEST_BEFORE) {
        List<CommonGrowth.Point> some =
            points.subList(Math.max(0, last - MOST_BEFORE), points.size());
        of(some, some.size() - window, kind)
            .filter(s -> s.isFound(credible, SURE))
            .filter(s -> s.standsWithoutAny(some, kind))
            .ifPresent(found::add);
      }
    }
    return found.stream().min(Comparator.comparingDouble(Slowing::chance));
  }

  private boolean isFound(double credible, double sure) {
    return wilts(sure) || isBelow(credible);
  }

  private boolean isBelow(double credible) {
    boolean growing = rateForetold >= FULL_GROWN;
    return growing && chance <= credible && share <= CLOUDY && recentShare <= BACK;
  }

  /** Says whether leaf is lost, whatever was foretold, and goes on to be. */
  private boolean wilts(double sure) {
    return rate * days < -WILTED && rate + sure * rateSd < 0 && recentShare <= 0;
  }

  /** Says whether it still shows, if less surely, whichever evening is left out. */
  private boolean standsWithoutAny(List<CommonGrowth.Point> points, Known kind) {
    int before = points.size() - evenings;
    for (int i = 0; i < points.size(); i++) {
      List<CommonGrowth.Point> others = new ArrayList<>(points);
      others.remove(i);
      boolean stands =
          of(others, i < before ? before - 1 : before, kind)
              .filter(s -> s.isFound(CREDIBLE_WITHOUT, NORMAL_95))
              .isPresent();
      if (!stands) {
        return false;
      }
    }
    return true;
  }

  /** Returns what is said of it. */
  Kind kind() {
    if (rate + NORMAL_95 * rateSd < 0) {
      return Kind.SHRINKS;
    }
    return share <= ALL_BUT_STOPPED && share + NORMAL_95 * shareSd <= SURELY_STOPPED
        ? Kind.STOPPED
        : Kind.SLOWED;
  }

  /** Holds the points from one on against those before; nothing where they grow about as before. */
  static Optional<Slowing> of(List<CommonGrowth.Point> points, int known, Known kind) {
    GrowthLine before = GrowthLine.of(points.subList(0, known));
    GrowthLine since = GrowthLine.of(points.subList(known - 1, points.size()));
    if (since.slope() > BACK * Math.max(0, before.slope())) {
      return Optional.empty();
    }
    double days = points.get(points.size() - 1).day() - points.get(known - 1).day();
    MixedOutcomes mixed = new MixedOutcomes();
    for (Ageing.Weighted way : kind.ways(points.get(known - 1).age())) {
      double[] shares = shares(points, known, way.way());
      if (shares.length > 0) {
        GrowthForetold foretold = new GrowthForetold(points, known, shares);
        mixed.add(way.weight(), NOISE.stream().map(foretold::under).toList());
      }
    }
    double rateForetold = mixed.growth() / days;
    int recently = Math.min(points.size() - 2, Math.max(known, points.size() - RECENT));
    GrowthLine recent = GrowthLine.of(points.subList(recently, points.size()));
    return Optional.of(
        new Slowing(
            points.get(known - 1).day(),
            points.size() - known,
            days,
            since.slope(),
            mixed.eveningSd() / Math.sqrt(since.spread()),
            before.slope(),
            rateForetold,
            mixed.share(),
            mixed.shareSd(),
            recent.slope() / rateForetold,
            mixed.chance()));
  }

  /** Returns a way's rate on each day of the points; empty where it is not known on all. */
  private static double[] shares(List<CommonGrowth.Point> points, int known, Ageing way) {
    CommonGrowth.Point origin = points.get(known - 1);
    double first = points.get(0).day();
    double[] shares = new double[(int) Math.round(points.get(points.size() - 1).day() - first)];
    for (int day = 0; day < shares.length; day++) {
      OptionalDouble share = way.rateShare(origin.age() + first + day + 0.5 - origin.day());
      if (share.isEmpty()) {
        return new double[0];
      }
      shares[day] = share.getAsDouble();
    }
    return shares;
  }
}
