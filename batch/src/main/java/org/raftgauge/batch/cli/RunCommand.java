// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.Progress;
import org.raftgauge.batch.run.RunFolder;
import org.raftgauge.batch.run.RunRequest;
import org.raftgauge.batch.run.RunSummary;
import org.raftgauge.batch.run.Tools;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Measures a folder of photos. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    header = "Measures a folder of photos and publishes the results.",
    description = {
      "%nThe results are a folder with photos.csv, sites.csv, rafts.csv, run.json and a",
      "picture of each photo in overlays/; for the latest evening of the photos also",
      "verdicts.csv, curves.csv and worklist.csv. A verdict says that growth departs",
      "from what is expected, not why."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to measure:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge run photos/tonight --book my-farm",
      "",
      "Photos that were measured before are known by their content and not measured",
      "again; a folder run twice adds nothing to the book. Ctrl-C leaves no half run.",
      "",
      "Exit codes: 0 published, 2 wrong call or book (nothing written), 3 failed."
    })
final class RunCommand implements Callable<Integer> {
  private final Workplace workplace;
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "PHOTOS",
      description = "Folder of photos (JPEG, PNG, TIFF), with all its folders.")
  private Path photos;

  @Option(
      names = "--book",
      paramLabel = "BOOK",
      required = true,
      description = "Folder of the crop book.")
  private Path book;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      description = {
        "Folder for the results: a new or empty one, or that of an earlier run, which it"
            + " replaces. Default: a new folder, named by the evening, in BOOK/runs."
      })
  private Path out;

  @Option(
      names = "--canopy",
      description = {
        "Also write, for each photo, its canopy in photo pixels to canopy/: NAME.coverage.png"
            + " (0 to 255) and NAME.site.png (16 bit: 0 no site, else 1024 * raft + 1 +"
            + " row * columns + column, all counted from 0)."
      })
  private boolean canopy;

  @Option(names = "--no-overlays", description = "Make no overlay pictures.")
  private boolean noOverlays;

  @Option(
      names = "--workers",
      paramLabel = "N",
      description = "Photos measured at once. Default: one for each core.")
  private int workers = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = {
        "How long to wait while another run uses the same book. Default: ${DEFAULT-VALUE}."
      })
  private long waitS = 600;

  @Option(names = "--quiet", description = "Say nothing unless something is wrong.")
  private boolean quiet;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  private boolean verbose;

  RunCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (workers < 1 || waitS < 0) {
      throw new ParameterException(
          spec.commandLine(), "--workers must be 1 or more and --wait 0 or more");
    }
    Folders.exists("BOOK", book, "give the folder that holds book.yaml");
    Folders.exists("PHOTOS", photos, "give the folder that holds the photos");
    Workplace.OpenBook open = workplace.open(book);
    open.problems().forEach(console.err()::println);
    FoundPhotos found = workplace.photos(photos);
    Folders.notEmpty(photos, found);
    RunPictures pictures = new RunPictures(open.farm(), wanted());
    Tools tools =
        new Tools(
            open.farm(), open.measurer(), pictures, progress(), open.page(), open.forecasts());
    RunSummary summary = RunFolder.run(request(open), found, tools);
    if (!quiet) {
      SummaryText.lines(summary, open.problems()).forEach(console.out()::println);
    }
    return ExitCode.DONE;
  }

  private RunRequest request(Workplace.OpenBook open) {
    OffsetDateTime now = OffsetDateTime.now(open.farm().zone());
    return new RunRequest(
        photos, book, Optional.ofNullable(out), workers, Duration.ofSeconds(waitS), now);
  }

  private EnumSet<RunPictures.Kind> wanted() {
    EnumSet<RunPictures.Kind> kinds = EnumSet.noneOf(RunPictures.Kind.class);
    if (!noOverlays) {
      kinds.add(RunPictures.Kind.OVERLAY);
    }
    if (canopy) {
      kinds.add(RunPictures.Kind.CANOPY);
    }
    return kinds;
  }

  private Progress progress() {
    if (quiet) {
      return new QuietProgress(console.err(), verbose);
    }
    return console.terminal()
        ? new BarProgress(console.err(), verbose)
        : new PlainProgress(console.err(), verbose);
  }
}
