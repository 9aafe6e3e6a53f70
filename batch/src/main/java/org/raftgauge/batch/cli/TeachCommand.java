// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.teaching.StartPainting;
import org.raftgauge.batch.teaching.TeachFiles;
import org.raftgauge.batch.teaching.TeachReport;
import org.raftgauge.batch.teaching.TeachRequest;
import org.raftgauge.core.book.ShippedColours;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Teaches a colour model from labelled pictures. */
@Command(
    name = "teach",
    mixinStandardHelpOptions = true,
    header = "Teaches a crop's colour model from pictures that you have painted.",
    description = {
      "%nWrites colour/NAME.yaml in the book, and in colour/NAME/ a report and pictures",
      "of what the model gets wrong. Then write \"colour_model: NAME\" at the crop in",
      "crops.yaml."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to learn from:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Examples:",
      "  raftgauge teach --book my-farm --start photos/tonight/DR-0401.jpg",
      "      Paints the photo as the current model sees it: DR-0401.labels.png beside",
      "      it.",
      "  raftgauge teach --book my-farm --crop basil photos/tonight/DR-04*.jpg",
      "      Teaches from those photos and the .labels.png beside each.",
      "",
      "Palette: green leaf 00A040, red leaf C0004C, pale leaf F0D000, dead leaf",
      "8C5A1E, algae 00B4C8, board FFFFFF, dark 303030, not to be learned from FF00FF.",
      "",
      "Exit codes: 0 written, 2 wrong call, book or pictures (nothing written), 3",
      "failed."
    })
final class TeachCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "PHOTO+LABEL",
      arity = "0..*",
      description = {
        "A photo and the picture painted on it, joined by a plus; a photo alone goes with"
            + " NAME.labels.png beside it."
      })
  private List<String> pictures = List.of();

  @Mixin private BookOptions options;

  private Path book;

  @Option(names = "--crop", paramLabel = "CROP", description = "The crop, as the book names it.")
  private String crop;

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "Name of the model. Default: the crop's name and \"-taught\".")
  private String name;

  @Option(
      names = "--station",
      paramLabel = "STATION",
      description = "Station of photos that neither manifest, name nor folder places.")
  private String station;

  @Option(
      names = "--start",
      paramLabel = "PHOTO",
      description = "Write a pre-painted picture of this photo instead; do not teach.")
  private Path start;

  TeachCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    book = options.find(console);
    if (start != null) {
      Path file = StartPainting.write(book, start, Optional.ofNullable(station));
      console.out().println("Painted  " + file);
      return ExitCode.DONE;
    }
    if (crop == null || pictures.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "give --crop and labelled pictures, or --start and a photo");
    }
    TeachFiles.Written written = TeachFiles.teach(request());
    console
        .out()
        .printf(
            Locale.ROOT,
            "Taught   from %d pictures; Dice %.3f on pictures not seen%n",
            pictures.size(),
            written.check().meanDice());
    console.out().println("Model    " + written.model());
    console.out().println("Report   " + written.report());
    console.out().println("Use it   colour_model: " + model() + " at " + crop + " in crops.yaml");
    if (written.check().isTooGood()) {
      console.out().println("Doubt    " + TeachReport.TOO_GOOD);
    }
    return ExitCode.DONE;
  }

  private String model() {
    return name != null ? name : crop.replace('/', '-').replace(' ', '-') + "-taught";
  }

  private TeachRequest request() {
    if (!model().matches("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,31}") || ShippedColours.has(model())) {
      throw new ParameterException(
          spec.commandLine(),
          "--name must be 1 to 32 letters, digits, dots, dashes, and not that of a built-in model");
    }
    return new TeachRequest(
        book,
        crop,
        model(),
        Optional.ofNullable(station),
        pictures.stream().map(TeachRequest.Pair::parse).toList());
  }
}
