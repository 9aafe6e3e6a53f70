// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.grade.FitBook;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.grader.FitRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderResult;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Fits a grader. */
@Command(
    name = "fit",
    mixinStandardHelpOptions = true,
    header = "Fits a grader to hand weighings and writes it to BOOK/graders.",
    description = {
      "%nJoins weighings.csv with the nearest photo of the same plant, fits open and",
      "closed sites apart, and writes CROP.yaml, CROP.html (summary) and plots. Needs",
      "at least 8 weighings of open or of closed sites, over the range of weights."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {"", "Example:", "  raftgauge grader fit --book my-farm --crop butterhead"})
final class GraderFitCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Mixin private BookOptions options;

  @Option(
      names = "--crop",
      paramLabel = "CROP",
      required = true,
      description = "Crop to fit; varieties get their own numbers where that pays.")
  private String crop;

  @Option(
      names = "--hours",
      paramLabel = "HOURS",
      description = {
        "How far photo and weighing may lie apart; a plant can grow by 5 to 8 %% a day."
            + " Default: ${DEFAULT-VALUE}."
      })
  private double hours = 24;

  @Option(
      names = "--state",
      paramLabel = "STATE",
      description =
          "Fit weighings of this state: whole, trimmed, drained or unsaid. Default: the commonest.")
  private String state;

  @Option(
      names = "--heights",
      description = {
        "Weigh closed sites by their height: only where the height of every closed plant is"
            + " measured, by ruler or a second camera. Default: by the plant's own growth curve or"
            + " the area that it shows."
      })
  private boolean heights;

  GraderFitCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (!(hours > 0 && hours <= 240)) {
      throw new ParameterException(spec.commandLine(), "--hours must be above 0, at most 240");
    }
    if (state != null && !isState(state)) {
      throw new ParameterException(
          spec.commandLine(), "--state must be whole, trimmed, drained or unsaid, got " + state);
    }
    Path book = options.find(console);
    CropBook read = GraderBook.open(book, console);
    GraderBook.hasCrop(read, crop);
    FitBook.Outcome outcome =
        FitBook.fit(
            read,
            new FitBook.Request(
                book,
                crop,
                Duration.ofMinutes(Math.round(hours * 60)),
                Optional.ofNullable(state),
                heights ? FitRule.defaults() : FitRule.oneCamera(),
                OffsetDateTime.now(read.zone())));
    outcome.lines().forEach(console.out()::println);
    if (outcome.result() instanceof GraderResult.NotFitted not) {
      console.err().println("No grader was made: " + not.reason());
      return ExitCode.WRONG_INPUT;
    }
    if (outcome.result() instanceof Grader grader) {
      for (Regime regime : Regime.values()) {
        console.out().println(line(grader, regime));
      }
      outcome.written().forEach(file -> console.out().println("Wrote    " + file));
      console.out().println(use(grader, read));
    }
    return ExitCode.DONE;
  }

  private static boolean isState(String text) {
    for (Weighing.State known : Weighing.State.values()) {
      if (known.name().toLowerCase(Locale.ROOT).equals(text)) {
        return true;
      }
    }
    return text.equals("unsaid");
  }

  private static String line(Grader grader, Regime regime) {
    Optional<RegimeFit> fit = grader.fit(regime);
    if (fit.isEmpty()) {
      return "No weights of " + regime + " sites: " + grader.refused().get(regime);
    }
    RegimeFit.Numbers numbers = fit.get().numbers();
    return String.format(
        Locale.ROOT,
        "%s %s sites from %d weighings; a plant left out is missed by %.1f %% on average",
        numbers.leftOut().tellsNothing() ? "Of no use:" : "Fitted",
        regime,
        numbers.weighings(),
        100 * numbers.leftOut().meanShare());
  }

  /** Says how the grader comes into use, or that it should not. */
  private String use(Grader grader, CropBook book) {
    boolean named =
        Optional.ofNullable(book.crops().get(crop)).flatMap(c -> c.grader()).isPresent();
    if (grader.fits().values().stream().allMatch(f -> f.numbers().leftOut().tellsNothing())) {
      return "Do not use it: mend weighings.csv, and fit again"
          + (named ? "; until then take grader out of " + crop + " in crops.yaml." : ".");
    }
    return "Evenings from now on are told by it; those before it was fitted are not."
        + (named
            ? ""
            : System.lineSeparator()
                + "To use it, write under "
                + crop
                + " in crops.yaml: grader: "
                + crop);
  }
}
