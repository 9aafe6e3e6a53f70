// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.raftgauge.batch.run.ProgramVersion;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.TaughtGround;
import org.raftgauge.core.teach.CrossValidation;
import org.raftgauge.core.teach.Teaching;

/** Writes a taught model as the YAML that the book reads. */
final class ModelFile {

  private ModelFile() {}

  static String text(TeachRequest request, Teaching.Taught taught) {
    TaughtColour model = taught.model();
    CrossValidation check = taught.check();
    StringBuilder text = new StringBuilder();
    text.append("# A colour model, written by raftgauge teach. Its report is in ")
        .append(request.model())
        .append("/report.md.\n");
    text.append("crop: ").append(quoted(request.crop())).append('\n');
    text.append("made_by: ")
        .append(quoted("raftgauge " + ProgramVersion.current().version()))
        .append('\n');
    text.append("pictures:\n");
    for (TeachRequest.Pair pair : request.pictures()) {
      text.append("  - ").append(quoted(pair.photo().getFileName().toString())).append('\n');
    }
    text.append(
        String.format(
            Locale.ROOT,
            "cross_validation: {folds: %d, photos: %d, dice_mean: %.4f, calibration_error: %.4f}%n",
            check.folds(),
            check.photos().size(),
            check.meanDice(),
            check.calibrationError()));
    text.append("# range of ln(G/R), ln(G/B), ln G of evened light (white is 1) that was seen\n");
    text.append("least: ").append(numbers(model.least())).append('\n');
    text.append("most: ").append(numbers(model.most())).append('\n');
    text.append("# softmax weights of the 20 cubic terms, for each tissue that was painted\n");
    text.append("weights:\n");
    model
        .weights()
        .forEach(
            (tissue, weights) ->
                text.append("  ")
                    .append(tissue.label())
                    .append(": ")
                    .append(numbers(weights))
                    .append('\n'));
    model.ground().ifPresent(ground -> append(ground, text));
    return text.toString().replace(System.lineSeparator(), "\n");
  }

  private static void append(TaughtGround ground, StringBuilder text) {
    text.append(
        "# the look at open ground: a network with one hidden layer, see batch/TEACHING.md\n");
    text.append("ground:\n");
    text.append("  middle: ").append(numbers(ground.middle())).append('\n');
    text.append("  spread: ").append(numbers(ground.spread())).append('\n');
    text.append("  units:\n");
    ground.units().forEach(unit -> text.append("    - ").append(numbers(unit)).append('\n'));
    text.append("  output: ").append(numbers(ground.output())).append('\n');
  }

  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private static String numbers(List<Double> values) {
    return values.stream()
        .map(v -> String.format(Locale.ROOT, "%.6f", v).replaceFirst("\\.?0+$", ""))
        .collect(Collectors.joining(", ", "[", "]"));
  }
}
