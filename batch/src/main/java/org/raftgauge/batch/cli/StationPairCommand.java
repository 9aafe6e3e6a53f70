// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import org.raftgauge.batch.page.PngFile;
import org.raftgauge.batch.station.CoverageMap;
import org.raftgauge.batch.station.LensText;
import org.raftgauge.batch.station.PairText;
import org.raftgauge.batch.station.TargetMoments;
import org.raftgauge.batch.station.TargetPhotos;
import org.raftgauge.core.calibrate.CalibrateFromPhotos;
import org.raftgauge.core.calibrate.CalibratePair;
import org.raftgauge.core.calibrate.CalibrateTogether;
import org.raftgauge.core.calibrate.CalibrationTarget;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.LensReport;
import org.raftgauge.core.calibrate.LensTerm;
import org.raftgauge.core.calibrate.PairFit;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Calibrates a pair of cameras. */
@Command(
    name = "pair",
    mixinStandardHelpOptions = true,
    header = "Calibrates two cameras side by side from photos of a printed target.",
    description = {
      "%nFasten both cameras as they will stay. Take 12 to 20 pairs of photos at the",
      "same moment, zoom and focus as in use: the whole target in both, in every",
      "corner, and some at 30 to 45 degrees to each side. Photos of a moment have the",
      "same name but for the marks, or come in the same order. Writes a station file",
      "of both cameras."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to look at:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge station pair left-photos right-photos --board chessboard:9x6:27 \\",
      "      --first-mark _left --mark _right --height 1500 \\",
      "      --out my-farm/stations/bench.yaml",
      "",
      "TARGET is as in: raftgauge station lens --help",
      "",
      "Exit codes: 0 a station was written, 2 wrong call or no pair from these photos."
    })
final class StationPairCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(index = "0", paramLabel = "FIRST", description = "Folder of the first camera's.")
  private Path first;

  @Parameters(index = "1", paramLabel = "SECOND", description = "Folder of the second camera's.")
  private Path second;

  @Option(
      names = "--board",
      paramLabel = "TARGET",
      required = true,
      description = "What the photos show; see below.")
  private String board;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "The station file to write, as BOOK/stations/NAME.yaml.")
  private Path out;

  @Option(
      names = "--mark",
      paramLabel = "TEXT",
      defaultValue = "_right",
      description = "What tells the second camera's files. Default: ${DEFAULT-VALUE}.")
  private String mark;

  @Option(
      names = "--first-mark",
      paramLabel = "TEXT",
      defaultValue = "",
      description = "What stands in its place in the first camera's files. Default: nothing.")
  private String firstMark;

  @Option(
      names = "--height",
      paramLabel = "MM",
      description = "The first camera's height over the deck, written to the station file.")
  private Double heightMm;

  @Option(
      names = "--wide",
      description = "Fit a third radial term too, for wide lenses with every corner covered.")
  private boolean wide;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  @SuppressWarnings("UnusedVariable") // Raftgauge reads it from the parsed line
  private boolean verbose;

  StationPairCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    CalibrationTarget target = target();
    if (heightMm != null && !(heightMm > 0 && heightMm <= 50_000)) {
      throw problem("--height " + heightMm, "is out of range", "give mm, above 0, at most 50000");
    }
    if (mark.isBlank()) {
      throw problem("--mark", "is blank", "give text that only the second camera's files have");
    }
    OutFiles.isNew("--out", out);
    TargetPhotos.check(List.of(first));
    TargetPhotos.check(List.of(second));
    Optional<TargetMoments.Seen> one = look("First camera", first, target);
    Optional<TargetMoments.Seen> two = look("Second camera", second, target);
    if (one.isEmpty() || two.isEmpty()) {
      return ExitCode.WRONG_INPUT;
    }
    TargetMoments.Marks marks = new TargetMoments.Marks(firstMark, mark);
    List<CalibratePair.Moment> moments = TargetMoments.of(one.get(), two.get(), marks);
    if (TargetMoments.samePhotos(moments)) {
      return none("both folders hold the same photos; give one folder for each camera");
    }
    Optional<PairFit> pair =
        CalibrateTogether.fit(camera(one.get()), camera(two.get()), moments, terms());
    if (pair.isEmpty()) {
      return none(
          "under three moments were found at which both cameras saw the target and agree; name both"
              + " photos of a moment alike but for the marks");
    }
    if (PairText.inOnePlace(pair.get())) {
      return none(
          String.format(
              Locale.ROOT,
              "the two cameras stand %.1f mm apart, which is no pair; give one folder for each"
                  + " camera, and set the cameras at least 50 mm apart",
              pair.get().baselineMm()));
    }
    PairText.Both both =
        new PairText.Both(
            one.get().fit(),
            two.get().fit(),
            pair.get(),
            marks,
            one.get().report().good() && two.get().report().good());
    write(both);
    map("first", one.get());
    map("second", two.get());
    PairText.unmarked(both, one.get(), two.get()).forEach(console.out()::println);
    return ExitCode.DONE;
  }

  private void map(String who, TargetMoments.Seen seen) throws IOException {
    Path map = out.resolveSibling(OutFiles.stem(out) + "-" + who + "-lens.png");
    PngFile.write(CoverageMap.draw(seen.report(), seen.fit()), map);
    console.out().println("Map      " + map);
  }

  private int none(String why) {
    console.err().println("No pair: " + why);
    return ExitCode.WRONG_INPUT;
  }

  private static CalibrateTogether.Camera camera(TargetMoments.Seen seen) {
    return new CalibrateTogether.Camera(seen.fit().lens(), seen.used());
  }

  private Optional<TargetMoments.Seen> look(String who, Path folder, CalibrationTarget target)
      throws InputException, IOException {
    console.out().println(who + ":");
    TargetPhotos seen = TargetPhotos.look(List.of(folder), target);
    LensReport report = CalibrateFromPhotos.from(seen.sightings(), terms());
    List<LensReport.LeftOut> leftOut = new ArrayList<>(seen.unreadable());
    leftOut.addAll(report.leftOut());
    LensText.lines(new LensReport(report.result(), leftOut, report.retake()))
        .forEach(console.out()::println);
    if (report.result() instanceof LensFit fit) {
      return Optional.of(new TargetMoments.Seen(seen.sightings(), fit, report));
    }
    console.err().println(who + ": " + LensText.noLens(report));
    return Optional.empty();
  }

  private void write(PairText.Both both) throws IOException {
    PairText.lines(both).forEach(console.out()::println);
    OptionalDouble height = heightMm == null ? OptionalDouble.empty() : OptionalDouble.of(heightMm);
    OutFiles.makeParent(out);
    Files.writeString(out, PairText.stationFile(both, height));
    console.out().println("Station  " + out);
    if (height.isEmpty()) {
      console.out().println("To do    write camera_height_mm into the station file");
    }
  }

  private Set<LensTerm> terms() {
    return wide ? EnumSet.allOf(LensTerm.class) : LensTerm.usual();
  }

  private CalibrationTarget target() throws InputException {
    return CalibrationTarget.parse(board)
        .orElseThrow(
            () ->
                problem(
                    "--board " + board,
                    "is no target",
                    "write it as in chessboard:10x7:25, ten by seven squares of 25 mm"));
  }

  private static InputException problem(String place, String found, String remedy) {
    return new InputException(List.of(new Problem(place, found, remedy)));
  }
}
