// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.raftgauge.batch.desk.Desk;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.MeasureArrival;
import org.raftgauge.batch.run.PairPhotos;
import org.raftgauge.batch.run.Progress;
import org.raftgauge.batch.run.RunFolder;
import org.raftgauge.batch.run.RunRequest;
import org.raftgauge.batch.run.RunSummary;
import org.raftgauge.batch.run.Tools;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
      "%nThe results are a folder: report.html to read first, photos.csv, sites.csv,",
      "rafts.csv, run.json and a picture of each photo in overlays/; for the latest",
      "evening of the photos also verdicts.csv, curves.csv, forecast.csv, worklist.csv",
      "and the worklist to print (PDF). A verdict says that growth departs from what",
      "is expected, not why."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to measure:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Examples:",
      "  raftgauge run photos/tonight --book my-farm",
      "  raftgauge run photos/tonight",
      "      The same with the book that lies beside or above the photos.",
      "  raftgauge run photos --since 2026-04-14 --to 2026-04-14",
      "      An old evening once more; nothing later than it is looked at.",
      "  raftgauge run card --watch",
      "      At the station: measures photos as they arrive and fills the screen with",
      "      GOOD, or with what to do while the raft is still there.",
      "",
      "Photos that were measured before are known by their content and not measured",
      "again; a folder run twice adds nothing to the book. Ctrl-C leaves no half run.",
      "",
      "Exit codes: 0 published, 2 wrong call or book (nothing written), 3 failed."
    })
final class RunCommand implements Callable<Integer> {
  /** What does the work; {@code Raftgauge} hands a command for Spark on before it comes here. */
  private enum Engine {
    LOCAL
  }

  private final Workplace workplace;
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "PHOTOS",
      description = "Folder of photos (JPEG, PNG, TIFF), with all its folders.")
  private Path photos;

  @Mixin private BookOptions options;

  private Path book;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      description = {
        "Folder for the results: a new or empty one, or that of an earlier run, which it"
            + " replaces. Default: a new folder, named by the evening, in BOOK/runs."
      })
  private Path out;

  @Mixin private ChoiceOptions choice;

  @Option(
      names = "--watch",
      description = {
        "Wait for photos and measure each as it arrives; after each the screen says GOOD, or what"
            + " to do. Results are published when none came for a while. Ctrl-C stops."
      })
  private boolean watch;

  @Option(
      names = "--quiet-after",
      paramLabel = "SECONDS",
      description = {
        "With --watch: publish when no photo came for so long. Default: ${DEFAULT-VALUE}."
      })
  private long quietAfterS = 60;

  @Option(
      names = "--desk",
      paramLabel = "PORT",
      description = {
        "With --watch: at http://localhost:PORT on this machine show the latest report, with a"
            + " button to each row of the worklist that marks it in seen.csv."
      })
  private Integer deskPort;

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
      names = "--engine",
      paramLabel = "ENGINE",
      description = {
        "local: threads of this program. spark: a cluster; --out is then a dataset, --master the"
            + " cluster's URL; see run --engine spark --help. Default: local."
      })
  @SuppressWarnings("UnusedVariable") // there is one left when it is parsed
  private Engine engine = Engine.LOCAL;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = {
        "How long to wait while another run uses the same book. Default: ${DEFAULT-VALUE}."
      })
  private long waitS = 600;

  @Option(names = "--quiet", description = "Say nothing unless something is wrong.")
  private boolean quiet;

  RunCommand(Workplace workplace, Console console) {
    this.workplace = workplace;
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (workers < 1 || waitS < 0 || quietAfterS < 1) {
      throw new ParameterException(
          spec.commandLine(), "--workers and --quiet-after must be 1 or more and --wait 0 or more");
    }
    if (deskPort != null && !(watch && deskPort >= 0 && deskPort <= 65_535)) {
      throw new ParameterException(
          spec.commandLine(),
          "--desk goes with --watch, and a port from 0 (any free one) to 65535");
    }
    Folders.exists("PHOTOS", photos, "give the folder that holds the photos");
    Folders.notABook(photos, workplace);
    book = options.find(photos, console);
    Workplace.OpenBook open = workplace.open(book);
    open.problems().forEach(console.err()::println);
    choice.photos().check(open.farm());
    if (watch) {
      watch(open);
      return ExitCode.DONE;
    }
    RunSummary summary = run(open, workers, progress());
    if (!quiet) {
      SummaryText.lines(summary, open).forEach(console.out()::println);
    }
    return ExitCode.DONE;
  }

  private RunSummary run(Workplace.OpenBook open, int atOnce, Progress progress)
      throws InputException, IOException {
    FoundPhotos all = PairPhotos.join(workplace.photos(photos), open.farm().book());
    Folders.notEmpty(photos, all);
    FoundPhotos found = choice.photos().of(all, open.farm(), book);
    Folders.someLeft(photos, found);
    Farm farm = choice.farm(open.farm());
    RunPictures pictures = new RunPictures(farm, wanted());
    Tools tools =
        new Tools(
            farm,
            open.measurer(),
            pictures,
            progress,
            open.page(),
            open.forecasts(),
            workplace.steps());
    return RunFolder.run(request(farm, atOnce), found, tools);
  }

  private RunRequest request(Farm farm, int atOnce) {
    OffsetDateTime now = OffsetDateTime.now(farm.zone());
    return new RunRequest(
        photos, book, Optional.ofNullable(out), atOnce, Duration.ofSeconds(waitS), now);
  }

  private void watch(Workplace.OpenBook open) throws InputException, IOException {
    String id = "watch " + OffsetDateTime.now(open.farm().zone()).toInstant();
    Optional<Desk> desk =
        deskPort == null
            ? Optional.empty()
            : Optional.of(
                WatchUntilStopped.desk(deskPort, book, open.farm(), Optional.ofNullable(out)));
    Watch.Job job =
        new Watch.Job(
            photos,
            workplace,
            open,
            new MeasureArrival(book, open.measurer(), id),
            this::publish,
            quietAfterS);
    WatchUntilStopped.run(job, desk, console);
  }

  /**
   * Publishes what has come so far, always in one folder, leaving a core to the next photo. The
   * book is read again: rows may have been marked seen, or plantings written, since.
   */
  private Path publish() throws InputException, IOException {
    Progress silent = new QuietProgress(console.err(), options.verbose());
    out = run(workplace.open(book), Math.max(1, workers - 1), silent).folder();
    return out;
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
      return new QuietProgress(console.err(), options.verbose());
    }
    return console.terminal()
        ? new BarProgress(console.err(), options.verbose())
        : new PlainProgress(console.err(), options.verbose());
  }
}
