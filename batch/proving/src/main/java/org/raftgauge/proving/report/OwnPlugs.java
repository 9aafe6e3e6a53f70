// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.raftgauge.batch.teaching.TeachFiles;
import org.raftgauge.batch.teaching.TeachRequest;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.PaintTruth;
import org.raftgauge.proving.accuracy.SiteKey;
import org.raftgauge.proving.accuracy.TruthSite;

/**
 * Measures plants in plugs of many kinds as farms would that each have one kind, and taught a model
 * of green and one of red leaf from photos of their own boards.
 */
final class OwnPlugs {
  private static final String MANIFEST = "manifest.csv";

  private final Path learn;
  private final Path judged;
  private final Path work;

  private OwnPlugs(Path learn, Path judged, Path work) {
    this.learn = learn;
    this.judged = judged;
    this.work = work;
  }

  /**
   * Teaches from the photos of the seed that rules were found on, and measures.
   *
   * @param bench what to work with
   * @param run the photos to measure, of another seed
   * @return what the taught models say of each site
   */
  static Map<SiteKey, Answer> measure(Bench bench, RenderedRun run) throws IOException {
    Path learn = RenderedRun.fillingsSet(bench, bench.tunedSeed());
    return new OwnPlugs(learn, run.set(), run.work().resolve("own-plugs")).measure();
  }

  private Map<SiteKey, Answer> measure() throws IOException {
    Path taught = teach();
    Map<SiteKey, Answer> answers = new HashMap<>();
    for (String filling : fillings()) {
      Path at = work.resolve(filling);
      Path book =
          BookCopy.naming(
              judged.resolve("book"), at.resolve("named"), leaf -> model(leaf, filling));
      BookCopy.of(taught.resolve("colour"), book.resolve("colour"));
      answers.putAll(Answer.read(RunBatch.over(photos(filling, at), book, at)));
    }
    if (answers.values().stream().allMatch(a -> a.projectedAreaCm2().isEmpty())) {
      throw new IOException("no photo of " + judged + " was measured by taught models");
    }
    return answers;
  }

  /** Copies the photos of a filling, with the manifest that says which station took them. */
  private Path photos(String filling, Path at) throws IOException {
    Path all = judged.resolve("photos");
    Path some = Files.createDirectories(at.resolve("photos"));
    Files.copy(all.resolve(MANIFEST), some.resolve(MANIFEST), StandardCopyOption.REPLACE_EXISTING);
    try (Stream<Path> files = Files.list(all.resolve(filling))) {
      Path to = Files.createDirectories(some.resolve(filling));
      for (Path file : files.toList()) {
        Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
      }
    }
    return some;
  }

  private static String model(String leaf, String filling) {
    return leaf + "-on-" + filling;
  }

  private List<String> fillings() throws IOException {
    return TruthSite.read(judged.resolve("truth.csv"), "condition").stream()
        .map(TruthSite::look)
        .distinct()
        .toList();
  }

  /** Teaches a model of each leaf colour on each filling; returns the book that holds them. */
  private Path teach() throws IOException {
    Map<String, String> crops = new HashMap<>();
    TruthSite.read(learn.resolve("truth.csv"), "crop")
        .forEach(site -> crops.put(site.key().photo(), site.look()));
    Map<String, List<TeachRequest.Pair>> lessons = new TreeMap<>();
    for (TeachRequest.Pair pair : PaintTruth.of(learn, work.resolve("painted"), PaintTruth.HALF)) {
      String crop = crops.get(pair.photo().getFileName().toString());
      String leaf = crop.matches("(red|purple)-.*") ? "red" : "green";
      String filling = pair.photo().getParent().getFileName().toString();
      lessons.computeIfAbsent(model(leaf, filling), m -> new ArrayList<>()).add(pair);
    }
    Path book = work.resolve("book");
    BookCopy.of(learn.resolve("book"), book);
    for (Map.Entry<String, List<TeachRequest.Pair>> lesson : lessons.entrySet()) {
      List<TeachRequest.Pair> pairs = lesson.getValue();
      String crop = crops.get(pairs.get(0).photo().getFileName().toString());
      try {
        TeachFiles.teach(new TeachRequest(book, crop, lesson.getKey(), Optional.empty(), pairs));
      } catch (InputException e) {
        throw new IOException("nothing can be taught from " + learn + ": " + e.problems(), e);
      }
    }
    return book;
  }
}
