// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.TaughtRule;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.problem.Problem;

/** Teaches a colour model, or says why the labelled pictures do not do. */
public final class Teaching {
  /** A photo is judged by a model that has not seen it. */
  private static final int LEAST_PHOTOS = 2;

  /** A tissue painted on fewer pixels tells nothing of its spread. */
  private static final int LEAST_PIXELS = 100;

  /** More than this share of unknown colours is no palette. */
  private static final double MOST_UNKNOWN = 0.02;

  /**
   * Where leaf and what is not leaf are told apart worse than this, on the very pixels that were
   * taught, some are painted wrong: guessing has 0.5, real leaf on soil over 0.9.
   */
  private static final double LEAST_TOLD = 0.75;

  private Teaching() {}

  /** What came of teaching. */
  public sealed interface Outcome permits Taught, Refused {}

  /**
   * A model.
   *
   * @param model the model
   * @param check how well it does on photos that it has not seen
   */
  public record Taught(TaughtColour model, CrossValidation check) implements Outcome {}

  /**
   * Nothing.
   *
   * @param problems what is wrong with the labelled pictures
   */
  public record Refused(List<Problem> problems) implements Outcome {

    /** Copies the list. */
    public Refused {
      problems = List.copyOf(problems);
    }
  }

  /**
   * Checks that a painted picture goes with its photo.
   *
   * @param place the painted picture's file, for the problems
   * @param labels what was painted
   * @param photo the photo
   * @return what is wrong with it
   */
  public static List<Problem> check(String place, Labels labels, RgbImage photo) {
    List<Problem> problems = new ArrayList<>();
    if (labels.width() != photo.width() || labels.height() != photo.height()) {
      problems.add(
          new Problem(
              place,
              "the painted picture is "
                  + size(labels.width(), labels.height())
                  + ", its photo "
                  + size(photo.width(), photo.height())
                  + " (upright)",
              "paint on a picture made with --start, and save it in its own size"));
    }
    if (labels.unknownFraction() > MOST_UNKNOWN) {
      problems.add(
          new Problem(
              place,
              String.format(
                  Locale.ROOT,
                  "%.1f %% of its pixels are in no colour of the palette",
                  100 * labels.unknownFraction()),
              "paint with a hard brush, without soft edges, and save as PNG; leave out what you"
                  + " do not know in magenta"));
    }
    return problems;
  }

  private static String size(int width, int height) {
    return width + " x " + height + " px";
  }

  /**
   * Teaches a model.
   *
   * @param name of the model
   * @param lessons one a photo
   * @return the model, or why there is none
   */
  public static Outcome teach(String name, List<Lesson> lessons) {
    List<Problem> problems = tooLittle(lessons);
    if (!problems.isEmpty()) {
      return new Refused(problems);
    }
    TaughtColour model = FitColour.to(name, lessons);
    List<Problem> contradictions = contradictions(model, lessons);
    return contradictions.isEmpty()
        ? new Taught(model, CrossValidation.of(lessons))
        : new Refused(contradictions);
  }

  private static List<Problem> tooLittle(List<Lesson> lessons) {
    List<Problem> problems = new ArrayList<>();
    if (lessons.size() < LEAST_PHOTOS) {
      problems.add(
          new Problem(
              "labelled pictures",
              "there is only " + lessons.size(),
              "label at least " + LEAST_PHOTOS + ", better 8: each is judged by the others"));
    }
    long leaf = 0;
    long other = 0;
    for (Tissue tissue : Tissue.values()) {
      long n = lessons.stream().mapToLong(l -> l.painted(tissue)).sum();
      leaf += tissue.isLeaf() ? n : 0;
      other += tissue.isLeaf() ? 0 : n;
      if (n > 0 && n < LEAST_PIXELS) {
        problems.add(
            new Problem(
                "tissue " + tissue.label(),
                "only " + n + " pixels on boards are painted so",
                "paint at least " + LEAST_PIXELS + ", or leave them out in magenta"));
      }
    }
    if (leaf < LEAST_PIXELS) {
      problems.add(missing("leaf", "green, red, pale or dead"));
    }
    if (other < LEAST_PIXELS) {
      problems.add(missing("what is not leaf", "board, dark or algae"));
    }
    return problems;
  }

  private static Problem missing(String what, String tissues) {
    return new Problem(
        "labelled pictures",
        "no " + what + " is painted on any board",
        "paint some of it as " + tissues);
  }

  private static List<Problem> contradictions(TaughtColour model, List<Lesson> lessons) {
    TaughtRule rule = new TaughtRule(model);
    if (told(lessons, rule) >= LEAST_TOLD) {
      return List.of();
    }
    Lesson worst =
        lessons.stream().min(Comparator.comparingDouble(l -> told(List.of(l), rule))).orElseThrow();
    return List.of(
        new Problem(
            "labelled pictures",
            String.format(
                Locale.ROOT,
                "they contradict each other: the same colours are painted as leaf and as what is"
                    + " not leaf (only %.0f %% of the two can be told apart)",
                100 * told(lessons, rule)),
            "look first at the one of "
                + worst.photo()
                + ": do photo and painting belong together, are the colours those of the palette"
                + " ("
                + String.join(", ", Stream.of(Tissue.values()).map(Tissue::label).toList())
                + ")?"));
  }

  /** Mean of the shares of leaf and of other pixels that are told right; 1 where one is absent. */
  private static double told(List<Lesson> lessons, TaughtRule rule) {
    double[] right = new double[2];
    double[] all = new double[2];
    for (Lesson lesson : lessons) {
      for (Lesson.Pixel pixel : lesson.pixels()) {
        if (pixel.inner) {
          int kind = pixel.tissue.isLeaf() ? 1 : 0;
          all[kind] += pixel.weight;
          boolean leaf = rule.leaf(pixel.colour) > 0.5;
          right[kind] += leaf == pixel.tissue.isLeaf() ? pixel.weight : 0;
        }
      }
    }
    return all[0] == 0 || all[1] == 0 ? 1 : (right[0] / all[0] + right[1] / all[1]) / 2;
  }
}
