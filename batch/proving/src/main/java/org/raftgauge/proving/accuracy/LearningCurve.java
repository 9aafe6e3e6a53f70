// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.batch.teaching.TeachRequest;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.measure.LightPhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.opencv.PictureCodec;
import org.raftgauge.core.teach.CrossValidation;
import org.raftgauge.core.teach.FitColour;
import org.raftgauge.core.teach.Labels;
import org.raftgauge.core.teach.Lesson;

/**
 * How well a colour model does by the number of labelled pictures, on rendered photos painted by
 * their truth: taught from some of one half, judged on some of the other half.
 */
public final class LearningCurve {
  private static final List<Integer> SIZES = List.of(1, 2, 4, 8, 16);

  /** Sets of pictures drawn for each size. */
  private static final int DRAWS = 3;

  /** At most so many photos are judged on. */
  private static final int JUDGED = 12;

  private static final long SEED = 4;

  private final Path set;
  private final CropBook book;

  private LearningCurve(Path set) {
    this.set = set;
    this.book = CropBook.read(set.resolve("book")).book();
  }

  /**
   * Teaches and judges; this takes minutes.
   *
   * @param set as {@code prove render} made it
   * @param paintings folder to paint into
   * @return rows of Markdown: pictures, judgements, Dice, area error
   * @throws IOException if a file cannot be read or written
   */
  public static List<String> rows(Path set, Path paintings) throws IOException {
    LearningCurve curve = new LearningCurve(set);
    List<TeachRequest.Pair> pairs = new ArrayList<>(PaintTruth.of(set, paintings, PaintTruth.HALF));
    pairs.removeIf(p -> p.photo().toString().contains(ScoreRun.UNANSWERABLE));
    Collections.shuffle(pairs, new Random(SEED));
    int half = pairs.size() / 2;
    List<Lesson> judged = curve.lessons(pairs.subList(half, Math.min(pairs.size(), half + JUDGED)));
    List<Lesson> taught = curve.lessons(pairs.subList(0, half));
    List<String> rows = new ArrayList<>();
    Random random = new Random(SEED);
    for (int size : SIZES) {
      List<CrossValidation.Photo> photos = new ArrayList<>();
      for (int draw = 0; draw < DRAWS && size <= taught.size(); draw++) {
        Collections.shuffle(taught, random);
        TaughtColour model = FitColour.to("few", taught.subList(0, size));
        photos.addAll(CrossValidation.judge(model, judged).photos());
      }
      if (!photos.isEmpty()) {
        rows.add(row(size, photos));
      }
    }
    return rows;
  }

  private List<Lesson> lessons(List<TeachRequest.Pair> pairs) throws IOException {
    List<Lesson> lessons = new ArrayList<>();
    for (TeachRequest.Pair pair : pairs) {
      LightPhoto.Result lit =
          LightPhoto.light(Files.readAllBytes(pair.photo()), facts(pair.photo()), book);
      if (lit.image().isPresent()) {
        Labels labels =
            Labels.read(PictureCodec.decode(Files.readAllBytes(pair.labels())).orElseThrow());
        Lesson lesson = Lesson.of(pair.photo().getFileName().toString(), lit.boards(), labels);
        if (Arrays.stream(Tissue.values()).anyMatch(t -> t.isLeaf() && lesson.painted(t) > 0)) {
          lessons.add(lesson); // without leaf there is no Dice
        }
      }
    }
    return lessons;
  }

  private PhotoFacts facts(Path photo) throws IOException {
    String name = set.resolve("photos").relativize(photo).toString().replace('\\', '/');
    for (CSVRecord row : Table.read(set.resolve("photos").resolve("manifest.csv"))) {
      if (Table.cell(row, "photo").equals(name)) {
        return new PhotoFacts(
            name,
            Optional.of(Table.cell(row, "taken_at")),
            Optional.of(Table.cell(row, "station")),
            Optional.empty(),
            Optional.empty());
      }
    }
    return PhotoFacts.of(name);
  }

  private static String row(int size, List<CrossValidation.Photo> photos) {
    List<Double> dice = photos.stream().map(CrossValidation.Photo::dice).toList();
    List<Double> error = photos.stream().map(p -> Math.abs(p.areaRatio() - 1)).toList();
    return String.format(
        Locale.ROOT,
        "| %d | %d | %.3f | %.3f | %.3f | %.1f %% | %.1f %% |",
        size,
        photos.size(),
        dice.stream().mapToDouble(Double::doubleValue).average().orElseThrow(),
        ScoreRun.quantile(dice, 0.05),
        ScoreRun.quantile(dice, 0),
        100 * ScoreRun.quantile(error, 0.5),
        100 * ScoreRun.quantile(error, 0.95));
  }
}
