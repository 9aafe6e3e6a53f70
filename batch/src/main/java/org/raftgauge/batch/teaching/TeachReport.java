// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.teach.CrossValidation;

/** Says in words and tables how well a taught model does. */
public final class TeachReport {
  /** What to say of figures that are better than any that painting by hand gives. */
  public static final String TOO_GOOD =
      "so good a figure says that the paintings are all but as a model painted them; where nobody"
          + " mended them, it says nothing: mend them by eye and teach again";

  private TeachReport() {}

  static String text(TeachRequest request, CrossValidation check) {
    StringBuilder text = new StringBuilder();
    text.append("# Colour model ").append(request.model()).append("\n\n");
    text.append(
        String.format(
            Locale.ROOT,
            """
            Taught for %s from %d labelled pictures. Every figure below is of pictures that the model
            in question had not seen: %d folds by photo. In the pictures `*.wrong.png` beside this
            file, magenta was found and is not painted as leaf, blue is painted and was not found.

            Agreement (Dice) of found and painted leaf: mean %.3f.

            | photo | Dice | found area / painted area |
            | --- | ---: | ---: |
            """,
            request.crop(),
            request.pictures().size(),
            check.folds(),
            check.meanDice()));
    for (CrossValidation.Photo photo : check.photos()) {
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %.3f | %.3f |%n",
              photo.photo(),
              photo.dice(),
              photo.areaRatio()));
    }
    if (check.isTooGood()) {
      text.append("\nDoubt: ").append(TOO_GOOD).append(".\n");
    }
    confusion(text, check);
    calibration(text, check);
    return text.toString().replace(System.lineSeparator(), "\n");
  }

  private static void confusion(StringBuilder text, CrossValidation check) {
    List<Tissue> tissues = check.tissues();
    text.append("\nWhat pixels painted as one tissue are taken for by their colour alone, %:\n\n");
    text.append(
        tissues.stream()
            .map(Tissue::label)
            .collect(Collectors.joining(" | ", "| painted | ", " |")));
    text.append("\n| --- |").append(" ---: |".repeat(tissues.size())).append('\n');
    for (Tissue painted : tissues) {
      text.append("| ").append(painted.label());
      for (Tissue taken : tissues) {
        text.append(String.format(Locale.ROOT, " | %.1f", 100 * check.share(painted, taken)));
      }
      text.append(" |\n");
    }
  }

  private static void calibration(StringBuilder text, CrossValidation check) {
    text.append(
        String.format(
            Locale.ROOT,
            "%nProbabilities of leaf that were said, and what came true (mean distance %.3f):%n%n",
            check.calibrationError()));
    text.append("| said | painted as leaf | share of pixels |\n| ---: | ---: | ---: |\n");
    for (CrossValidation.Bin bin : check.calibration()) {
      text.append(
          String.format(
              Locale.ROOT,
              "| %.2f | %.2f | %.3f |%n",
              bin.said(),
              bin.leafFraction(),
              bin.weightFraction()));
    }
  }
}
