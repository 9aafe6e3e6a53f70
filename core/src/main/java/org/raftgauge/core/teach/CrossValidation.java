// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.GroundNetwork;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.canopy.TaughtRule;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Judges teaching by photo: each photo is measured by a model that was taught on photos of the
 * other folds only.
 */
public final class CrossValidation {
  /** Mean agreement over which leaf was hardly painted by a person. */
  private static final double TOO_GOOD = 0.995;

  /** Photos are dealt out to this many folds at most. */
  private static final int MOST_FOLDS = 5;

  private static final int BINS = 10;

  private final List<Photo> photos = new ArrayList<>();
  private final Map<Tissue, Map<Tissue, Double>> confusion = new EnumMap<>(Tissue.class);
  private final double[][] bins = new double[BINS][3];
  private final int folds;

  private CrossValidation(int folds) {
    this.folds = folds;
  }

  /**
   * How a photo came out.
   *
   * @param photo its name
   * @param dice agreement of found and painted leaf, 0..1, over its boards
   * @param areaRatio found over painted leaf
   * @param wrong its boards with what is wrong: magenta is found and not painted as leaf, blue is
   *     painted and not found
   */
  public record Photo(String photo, double dice, double areaRatio, List<RgbImage> wrong) {}

  /**
   * A step of probability.
   *
   * @param said mean probability of leaf that was said
   * @param leafFraction share that was painted as leaf
   * @param weightFraction share of all painted pixels
   */
  public record Bin(double said, double leafFraction, double weightFraction) {}

  /**
   * Validates teaching.
   *
   * @param lessons two or more
   * @return how each photo came out by a model that had not seen it
   */
  public static CrossValidation of(List<Lesson> lessons) {
    CrossValidation check = new CrossValidation(Math.min(MOST_FOLDS, lessons.size()));
    for (int fold = 0; fold < check.folds; fold++) {
      List<Lesson> taught = new ArrayList<>();
      List<Lesson> judged = new ArrayList<>();
      for (int i = 0; i < lessons.size(); i++) {
        (i % check.folds == fold ? judged : taught).add(lessons.get(i));
      }
      if (canTeach(taught)) {
        TaughtColour model = FitColour.to("fold", taught);
        judged.forEach(lesson -> check.judge(lesson, model));
      }
    }
    return check;
  }

  /**
   * Judges a model on pictures that it was not taught from.
   *
   * @param model the model
   * @param unseen one lesson or more
   * @return how each photo came out
   */
  public static CrossValidation judge(TaughtColour model, List<Lesson> unseen) {
    CrossValidation check = new CrossValidation(1);
    unseen.forEach(lesson -> check.judge(lesson, model));
    return check;
  }

  private static boolean canTeach(List<Lesson> lessons) {
    boolean leaf = false;
    boolean other = false;
    for (Lesson lesson : lessons) {
      for (Lesson.Pixel pixel : lesson.pixels()) {
        leaf |= pixel.inner && pixel.tissue.isLeaf();
        other |= pixel.inner && !pixel.tissue.isLeaf();
      }
    }
    return leaf && other;
  }

  private void judge(Lesson lesson, TaughtColour model) {
    TaughtRule rule = new TaughtRule(model);
    Optional<GroundNetwork> network = model.ground().map(GroundNetwork::new);
    for (Lesson.Pixel pixel : lesson.pixels()) {
      if (pixel.inner) {
        confusion
            .computeIfAbsent(pixel.tissue, t -> new EnumMap<>(Tissue.class))
            .merge(rule.likeliest(pixel.colour), pixel.weight, Double::sum);
      }
      double said =
          pixel.ground.length > 0 && network.isPresent()
              ? FitGround.probability(network.get(), pixel, rule)
              : rule.leaf(pixel.colour);
      double[] bin = bins[(int) Math.min(BINS - 1, said * BINS)];
      bin[0] += pixel.weight;
      bin[1] += pixel.weight * said;
      bin[2] += pixel.tissue.isLeaf() ? pixel.weight : 0;
    }
    LeafModel compiled = LeafModel.taught(model);
    long[] counts = new long[3];
    List<RgbImage> wrong = new ArrayList<>();
    for (LitBoard board : lesson.boards()) {
      wrong.add(compare(board, board.canopy(compiled), lesson, counts));
    }
    double dice = counts[0] + counts[1] == 0 ? 1 : 2.0 * counts[2] / (counts[0] + counts[1]);
    photos.add(new Photo(lesson.photo(), dice, (double) counts[0] / Math.max(1, counts[1]), wrong));
  }

  /** Counts found, painted and both; paints what is wrong. */
  private static RgbImage compare(LitBoard board, Canopy canopy, Lesson lesson, long[] counts) {
    RgbImage deck = board.deck().image();
    byte[] rgb = deck.rgb().clone();
    for (int i = 0; i < canopy.coverage().length; i++) {
      Optional<Tissue> painted =
          lesson.paintedAt(board, i % deck.width(), Math.floorDiv(i, deck.width()));
      if (painted.isPresent()) {
        boolean found = (canopy.coverage()[i] & 0xff) >= 128;
        boolean leaf = painted.get().isLeaf();
        counts[0] += found ? 1 : 0;
        counts[1] += leaf ? 1 : 0;
        counts[2] += found && leaf ? 1 : 0;
        if (found != leaf) {
          rgb[3 * i] = (byte) (found ? 255 : 0);
          rgb[3 * i + 1] = 0;
          rgb[3 * i + 2] = (byte) 255;
        }
      }
    }
    return RgbImage.of(deck.width(), deck.height(), rgb);
  }

  /** Returns how each photo came out, worst first. */
  public List<Photo> photos() {
    return photos.stream().sorted((a, b) -> Double.compare(a.dice(), b.dice())).toList();
  }

  /** Returns how many folds the photos were dealt out to. */
  public int folds() {
    return folds;
  }

  /** Returns the mean agreement of found and painted leaf over the photos, 0..1. */
  public double meanDice() {
    return photos.stream().mapToDouble(Photo::dice).average().orElse(0);
  }

  /**
   * Says whether found and painted leaf agree better than leaf that a person painted: outlines
   * drawn by hand wander by a pixel or more, which alone costs a hundredth. A working value.
   */
  public boolean isTooGood() {
    return meanDice() > TOO_GOOD;
  }

  /**
   * Returns which share of the pixels painted as one tissue is taken for another by colour alone.
   *
   * @param painted what they were painted as
   * @param taken what they are taken for
   * @return 0..1; 0 where none was painted
   */
  public double share(Tissue painted, Tissue taken) {
    Map<Tissue, Double> row = confusion.getOrDefault(painted, Map.of());
    double all = row.values().stream().mapToDouble(Double::doubleValue).sum();
    return all == 0 ? 0 : row.getOrDefault(taken, 0.0) / all;
  }

  /** Returns the tissues that were painted, in their order. */
  public List<Tissue> tissues() {
    return List.copyOf(confusion.keySet());
  }

  /** Returns what probabilities of leaf came true, in ten steps; empty steps are left out. */
  public List<Bin> calibration() {
    double all = 0;
    for (double[] bin : bins) {
      all += bin[0];
    }
    List<Bin> steps = new ArrayList<>();
    for (double[] bin : bins) {
      if (bin[0] > 0) {
        steps.add(new Bin(bin[1] / bin[0], bin[2] / bin[0], bin[0] / all));
      }
    }
    return steps;
  }

  /** Returns the mean distance of said from true probability, 0..1. */
  public double calibrationError() {
    return calibration().stream()
        .mapToDouble(b -> b.weightFraction() * Math.abs(b.said() - b.leafFraction()))
        .sum();
  }
}
