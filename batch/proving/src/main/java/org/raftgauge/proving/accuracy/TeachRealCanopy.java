// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.teach.FitColour;
import org.raftgauge.core.teach.Lesson;
import org.raftgauge.proving.accuracy.RealPhotoScore.Agreement;

/**
 * Teaches on a half of the real photos with hand-drawn masks and judges on the other half, both
 * ways round; and on few of them, for the learning curve.
 */
public final class TeachRealCanopy {
  private static final List<Integer> SIZES = List.of(1, 2, 4, 8, 16);

  /** Sets of photos drawn for each size. */
  private static final int DRAWS = 3;

  /** The learning curve is judged on every third photo of the half that is not taught from. */
  private static final int CURVE_STEP = 6;

  private static final long SEED = 4;

  private final RealLesson photos;
  private final List<Agreement> halves = new ArrayList<>();
  private final Map<Integer, List<Agreement>> curve = new TreeMap<>();

  private TeachRealCanopy(RealLesson photos) {
    this.photos = photos;
  }

  /**
   * Teaches and judges; this takes minutes.
   *
   * @param folder holds a folder a set
   * @param set the set
   * @return rows of Markdown: a summary, and one for each size of the learning curve
   * @throws IOException if a file cannot be read
   */
  public static List<String> rows(Path folder, RealSet set) throws IOException {
    TeachRealCanopy teach = new TeachRealCanopy(new RealLesson(folder, set));
    for (int half = 0; half < 2; half++) {
      teach.half(half);
    }
    List<String> rows = new ArrayList<>();
    rows.add(row(set, "half of them, both ways round", teach.halves));
    teach.curve.forEach((size, scores) -> rows.add(row(set, "" + size, scores)));
    return rows;
  }

  private void half(int half) throws IOException {
    List<Lesson> lessons = new ArrayList<>();
    for (int i = half; i < photos.count(); i += 2) {
      lessons.add(photos.lesson(i));
    }
    List<TaughtColour> models = new ArrayList<>(List.of(FitColour.to("half", lessons)));
    List<Integer> sizes = new ArrayList<>();
    Random random = new Random(SEED);
    for (int size : half == 0 ? SIZES : List.<Integer>of()) {
      for (int draw = 0; draw < DRAWS; draw++) {
        List<Lesson> drawn = new ArrayList<>(lessons);
        Collections.shuffle(drawn, random);
        models.add(FitColour.to("few", drawn.subList(0, Math.min(size, drawn.size()))));
        sizes.add(size);
      }
    }
    for (int i = 1 - half; i < photos.count(); i += 2) {
      boolean inCurve = (i - 1 + half) % CURVE_STEP == 0;
      List<Agreement> scores = photos.score(i, inCurve ? models : models.subList(0, 1));
      halves.add(scores.get(0));
      for (int m = 1; m < scores.size(); m++) {
        curve.computeIfAbsent(sizes.get(m - 1), s -> new ArrayList<>()).add(scores.get(m));
      }
    }
  }

  /** Writes a row: set, pictures taught from, judgements, Dice, area error. */
  static String row(RealSet set, String taught, List<Agreement> scores) {
    List<Double> dice = scores.stream().map(Agreement::dice).toList();
    List<Double> error = scores.stream().map(s -> Math.abs(s.areaRatio() - 1)).toList();
    return String.format(
        Locale.ROOT,
        "| %s | %s | %d | %.3f | %.3f | %.3f | %.1f %% |",
        set.label(),
        taught,
        scores.size(),
        dice.stream().mapToDouble(Double::doubleValue).average().orElseThrow(),
        ScoreRun.quantile(dice, 0.05),
        ScoreRun.quantile(dice, 0),
        100 * ScoreRun.quantile(error, 0.5));
  }
}
