// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The ln(area) that plants have in common on each evening, whatever each is larger or smaller by
 * for good: a table of plants and evenings taken apart into a value for each plant and one for each
 * evening, by robust centres in turn (Tukey 1977, "Exploratory Data Analysis", chapter 11, with
 * biweights in place of medians; from memory). Plants that are missing on an evening, harvested
 * since or set in later move nothing.
 *
 * @param points evenings in order, each with what plants have in common
 */
record CommonGrowth(List<Point> points) {
  private static final int ROUNDS = 6;
  private static final double PHOTO_SD = 0.02;

  /** Copies the list. */
  CommonGrowth {
    points = List.copyOf(points);
  }

  /**
   * An evening.
   *
   * @param day of the evening, as a day number
   * @param age mean age of the plants seen, days
   * @param lnArea what they have in common
   * @param standardError of it as far as plants err by themselves
   * @param plants how many were seen
   */
  record Point(double day, double age, double lnArea, double standardError, int plants) {}

  /**
   * A plant on an evening.
   *
   * @param plant number of the plant, from 0
   * @param day of the evening, as a day number
   * @param age days
   * @param lnArea of it, corrected for what is known of its station
   */
  record Look(int plant, long day, double age, double lnArea) {}

  /**
   * Takes looks apart.
   *
   * @param looks in any order, at most one of a plant on an evening
   * @param fewest plants that make an evening count
   */
  static CommonGrowth of(List<Look> looks, int fewest) {
    long[] days = looks.stream().mapToLong(Look::day).sorted().distinct().toArray();
    List<List<Look>> evenings = new ArrayList<>();
    while (evenings.size() < days.length) {
      evenings.add(new ArrayList<>());
    }
    int plants = 0;
    for (Look look : looks) {
      evenings.get(Arrays.binarySearch(days, look.day())).add(look);
      plants = Math.max(plants, look.plant() + 1);
    }
    evenings.removeIf(evening -> evening.size() < fewest);
    return new CommonGrowth(points(evenings, new double[plants]));
  }

  private static List<Point> points(List<List<Look>> evenings, double[] own) {
    List<Point> points = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      points.clear();
      evenings.forEach(evening -> points.add(point(evening, own)));
      settle(evenings, points, own);
    }
    return points;
  }

  private static Point point(List<Look> evening, double[] own) {
    RobustCentre centre =
        RobustCentre.of(evening.stream().mapToDouble(l -> l.lnArea() - own[l.plant()]).toArray());
    return new Point(
        evening.get(0).day(),
        evening.stream().mapToDouble(Look::age).average().orElseThrow(),
        centre.centre(),
        centre.standardError(PHOTO_SD),
        evening.size());
  }

  /** Finds what each plant is larger by, as the middle over its evenings. */
  private static void settle(List<List<Look>> evenings, List<Point> points, double[] own) {
    List<List<Double>> off = new ArrayList<>();
    for (int plant = 0; plant < own.length; plant++) {
      off.add(new ArrayList<>());
    }
    for (int i = 0; i < points.size(); i++) {
      for (Look look : evenings.get(i)) {
        off.get(look.plant()).add(look.lnArea() - points.get(i).lnArea());
      }
    }
    for (int plant = 0; plant < own.length; plant++) {
      if (!off.get(plant).isEmpty()) {
        own[plant] =
            RobustCentre.median(off.get(plant).stream().mapToDouble(Double::doubleValue).toArray());
      }
    }
  }
}
