// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.GraderReader;
import org.raftgauge.core.book.GraderSheet;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.ReadGrader;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.InputException;

/** Finds the graders of a book. */
public final class BookGraders {

  private BookGraders() {}

  /**
   * Reads the grader of a crop: the one that {@code crops.yaml} names, else the file of the crop's
   * own name.
   *
   * @param book the crop book as read
   * @param folder of the book
   * @param crop the crop
   * @return the grader, or nothing where there is no such file
   * @throws InputException if the file cannot be used
   */
  public static Optional<Grader> of(CropBook book, Path folder, String crop) throws InputException {
    String name = Optional.ofNullable(book.crops().get(crop)).flatMap(Crop::grader).orElse(crop);
    Path file = folder.resolve("graders").resolve(name + ".yaml");
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    Findings findings = new Findings();
    Optional<GraderSheet> sheet = GraderReader.read(file, findings);
    Optional<Grader> grader = sheet.flatMap(s -> ReadGrader.from(s, findings));
    if (grader.isEmpty()) {
      throw new InputException(findings.list());
    }
    return grader;
  }
}
