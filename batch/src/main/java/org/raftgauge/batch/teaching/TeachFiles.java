// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.LightPhoto;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.teach.CrossValidation;
import org.raftgauge.core.teach.Labels;
import org.raftgauge.core.teach.Lesson;
import org.raftgauge.core.teach.Teaching;

/** Teaches from files: reads labelled pictures, writes model, report and pictures of mistakes. */
public final class TeachFiles {
  private final TeachRequest request;
  private final CropBook book;
  private final List<Problem> problems = new ArrayList<>();

  private TeachFiles(TeachRequest request, CropBook book) {
    this.request = request;
    this.book = book;
  }

  /**
   * What was written.
   *
   * @param model the model's file
   * @param report the report's file
   * @param check how well the model does
   */
  public record Written(Path model, Path report, CrossValidation check) {}

  /**
   * Teaches a model.
   *
   * @param request what is to be taught
   * @return what was written
   * @throws InputException if book, photos or labels do not do; nothing is written then
   * @throws IOException if a file cannot be written
   */
  public static Written teach(TeachRequest request) throws InputException, IOException {
    return new TeachFiles(request, CropBook.read(request.book()).book()).teach();
  }

  private Written teach() throws InputException, IOException {
    if (!book.crops().containsKey(request.crop())) {
      throw new InputException(
          List.of(
              new Problem(
                  "--crop",
                  "the book has no usable crop \"" + request.crop() + "\"",
                  NearestSpelling.remedy(request.crop(), book.crops().keySet()))));
    }
    List<Lesson> lessons = new ArrayList<>();
    for (TeachRequest.Pair pair : request.pictures()) {
      read(pair, lessons);
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    Teaching.Outcome outcome = Teaching.teach(request.model(), lessons);
    if (outcome instanceof Teaching.Refused refused) {
      throw new InputException(refused.problems());
    }
    return write((Teaching.Taught) outcome);
  }

  private void read(TeachRequest.Pair pair, List<Lesson> lessons) throws InputException {
    LightPhoto.Result lit =
        LightPhoto.light(
            PhotoFile.bytes(pair.photo()), PhotoFile.facts(pair.photo(), request.station()), book);
    if (lit.image().isEmpty()) {
      problems.add(new Problem(pair.photo().toString(), lit.refused(), lit.remedy()));
      return;
    }
    if (!Files.exists(pair.labels())) {
      problems.add(
          new Problem(
              pair.labels().toString(),
              "there is no painted picture for " + pair.photo(),
              "make one with --start, mend it, or give PHOTO+LABEL"));
      return;
    }
    Labels labels = Labels.read(PhotoFile.picture(pair.labels()));
    List<Problem> found = Teaching.check(pair.labels().toString(), labels, lit.image().get());
    problems.addAll(found);
    if (found.isEmpty()) {
      lessons.add(Lesson.of(pair.photo().getFileName().toString(), lit.boards(), labels));
    }
  }

  private Written write(Teaching.Taught taught) throws IOException {
    Path colour = Files.createDirectories(request.book().resolve("colour"));
    Path folder = Files.createDirectories(colour.resolve(request.model()));
    for (CrossValidation.Photo photo : taught.check().photos()) {
      for (int b = 0; b < photo.wrong().size(); b++) {
        String name = photo.photo() + (photo.wrong().size() > 1 ? "." + (b + 1) : "");
        RgbImage wrong = photo.wrong().get(b);
        PalettePicture.write(wrong, folder.resolve(name + ".wrong.png"));
      }
    }
    Path report = folder.resolve("report.md");
    Files.writeString(report, TeachReport.text(request, taught.check()), StandardCharsets.UTF_8);
    Path model = colour.resolve(request.model() + ".yaml");
    Path draft = colour.resolve("." + request.model() + ".yaml.new");
    Files.writeString(draft, ModelFile.text(request, taught), StandardCharsets.UTF_8);
    Files.move(draft, model, StandardCopyOption.REPLACE_EXISTING);
    return new Written(model, report, taught.check());
  }
}
