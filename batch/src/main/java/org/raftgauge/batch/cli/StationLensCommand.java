// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import org.raftgauge.batch.page.PngFile;
import org.raftgauge.batch.station.CoverageMap;
import org.raftgauge.batch.station.LensText;
import org.raftgauge.batch.station.TargetPhotos;
import org.raftgauge.core.calibrate.CalibrateFromPhotos;
import org.raftgauge.core.calibrate.CalibrationTarget;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.LensReport;
import org.raftgauge.core.calibrate.LensTerm;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Calibrates a camera's lens. */
@Command(
    name = "lens",
    mixinStandardHelpOptions = true,
    header = "Calibrates a lens from photos of a printed target.",
    description = {
      "%nTake 12 to 20 photos with the station's camera, zoom and focus as in use: the",
      "whole target in each, in every corner of the picture, and some at 30 to 45",
      "degrees to each side. Writes a station file and a map of the picture that shows",
      "where the target was seen."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to look at:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge station lens target-photos --board chessboard:9x6:27 \\",
      "      --height 1500 --out my-farm/stations/bench.yaml",
      "",
      "TARGET is one of (columns and rows of a chessboard are counted in squares):",
      "  chessboard:COLUMNSxROWS:SQUARE_MM",
      "  squares:COLUMNSxROWS:SIDE_MM:PITCH_MM",
      "  circles:COLUMNSxROWS:DIAMETER_MM:PITCH_MM",
      "  staggered-circles:COLUMNSxROWS:DIAMETER_MM:PITCH_MM",
      "",
      "Exit codes: 0 a lens was written, 2 wrong call or no lens from these photos."
    })
final class StationLensCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "PHOTOS", arity = "1..*", description = "Photos, or folders of them.")
  private List<Path> photos;

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
      names = "--height",
      paramLabel = "MM",
      description = "The camera's height over the deck, written to the station file.")
  private Double heightMm;

  @Option(
      names = "--wide",
      description = "Fit a third radial term too, for wide lenses with every corner covered.")
  private boolean wide;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  @SuppressWarnings("UnusedVariable") // Raftgauge reads it from the parsed line
  private boolean verbose;

  StationLensCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    CalibrationTarget target = target();
    if (heightMm != null && !(heightMm > 0 && heightMm <= 50_000)) {
      throw problem("--height " + heightMm, "is out of range", "give mm, above 0, at most 50000");
    }
    OutFiles.isNew("--out", out);
    TargetPhotos seen = TargetPhotos.look(photos, target);
    LensReport report = CalibrateFromPhotos.from(seen.sightings(), terms());
    List<LensReport.LeftOut> leftOut = new ArrayList<>(seen.unreadable());
    leftOut.addAll(report.leftOut());
    LensReport all = new LensReport(report.result(), leftOut, report.retake());
    LensText.lines(all).forEach(console.out()::println);
    if (!(all.result() instanceof LensFit fit)) {
      console.err().println(LensText.noLens(all));
      return ExitCode.WRONG_INPUT;
    }
    OptionalDouble height = heightMm == null ? OptionalDouble.empty() : OptionalDouble.of(heightMm);
    OutFiles.makeParent(out);
    Files.writeString(out, LensText.stationFile(all, fit, target, height));
    Path map = out.resolveSibling(OutFiles.stem(out) + "-lens.png");
    PngFile.write(CoverageMap.draw(all, fit), map);
    console.out().println("Station  " + out);
    console.out().println("Map      " + map);
    if (height.isEmpty()) {
      console.out().println("To do    write camera_height_mm into the station file");
    }
    return ExitCode.DONE;
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
