// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.raftgauge.batch.begin.Beginning;
import org.raftgauge.batch.begin.WriteBook;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Begins a crop book. */
@Command(
    name = "new",
    mixinStandardHelpOptions = true,
    header = "Begins a crop book: a folder of commented files to go on from.",
    description = {
      "%nAsks for what no option says, on a terminal. The folder must be new or empty;",
      "nothing is ever overwritten. Lengths in mm."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhere:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge new my-farm --board 600x1200 --rows 6 --columns 3 --pitch 180 \\",
      "      --photo 3000x4000 --height 1600 --view 1100 --crop butterhead",
      "",
      "Exit codes: 0 written, 2 wrong call (nothing written), 3 failed."
    })
final class NewCommand implements Callable<Integer> {
  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "BOOK", description = "The new book's folder.")
  private Path book;

  @Option(
      names = "--time-zone",
      paramLabel = "ZONE",
      description = "The farm's, as in Europe/Lisbon. Default: this machine's.")
  private ZoneId zone;

  @Option(
      names = "--units",
      paramLabel = "UNITS",
      description = "Of reports: METRIC or IMPERIAL. Default: metric.")
  private Units units = Units.METRIC;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description =
          "PASSING: rafts come to the camera; FIXED: it hangs over a pond. Default: passing.")
  private Station.Kind kind = Station.Kind.PASSING;

  @Option(
      names = "--board",
      paramLabel = "WxL",
      description =
          "Size of the board, as in 600x1200: along columns 1, 2, 3 x along rows A, B, C.")
  private String board;

  @Option(names = "--rows", paramLabel = "N", description = "Rows of holes.")
  private String rows;

  @Option(names = "--columns", paramLabel = "N", description = "Columns of holes.")
  private String columns;

  @Option(
      names = "--pitch",
      paramLabel = "P",
      description = "From hole to hole, as in 180, or 180x190 along columns x along rows.")
  private String pitch;

  @Option(
      names = "--photo",
      paramLabel = "WxH",
      description = "Size of the camera's photos in pixels, upright as they are shown.")
  private String photo;

  @Option(
      names = "--height",
      paramLabel = "MM",
      description = "From the lens down to the top of the board.")
  private String height;

  @Option(
      names = "--view",
      paramLabel = "MM",
      description =
          "Deck that the photo's width shows, read off a tape laid on a board."
              + " Without it the lens is a guess.")
  private String view;

  @Option(names = "--crop", paramLabel = "CROP", description = "Name of the first crop.")
  private String crop;

  @Option(names = "--red", description = "Its leaves are red (the model for them is provisional).")
  private boolean red;

  @Option(
      names = "--raft",
      paramLabel = "ID",
      description = "Id of the first raft. Default: ${DEFAULT-VALUE}.")
  private String raft = "R-001";

  @Option(
      names = "--pond",
      paramLabel = "POND",
      description = "Its pond. Default: ${DEFAULT-VALUE}.")
  private String pond = "P1";

  @Option(
      names = "--transplanted",
      paramLabel = "DATE",
      description = "When it was planted. Default: today.")
  private LocalDate transplanted;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  @SuppressWarnings("UnusedVariable") // Raftgauge reads it from the parsed line
  private boolean verbose;

  NewCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    Answers answers = new Answers(spec.commandLine(), console);
    zone = zone == null ? ZoneId.systemDefault() : zone;
    List<Double> size = answers.sizes("--board", board, "Board, width x length in mm", 2);
    int rowCount = answers.count("--rows", rows, "Rows of holes (A, B, C, ...)");
    int columnCount = answers.count("--columns", columns, "Columns of holes (1, 2, 3, ...)");
    List<Double> apart = answers.sizes("--pitch", pitch, "From hole to hole, in mm", 1);
    List<Double> pixels = answers.sizes("--photo", photo, "Photo, width x height in pixels", 2);
    double over =
        answers.sizes("--height", height, "Lens over the top of the board, in mm", 1).get(0);
    OptionalDouble across =
        answers.maybe("--view", view, "Deck that the photo's width shows, in mm (blank: a guess)");
    String what = answers.text("--crop", crop, "First crop", "lettuce");
    LocalDate on = transplanted == null ? LocalDate.now(zone) : transplanted;
    Beginning.Holes holes =
        new Beginning.Holes(
            size.get(0),
            size.get(1),
            rowCount,
            columnCount,
            apart.get(0),
            apart.get(apart.size() - 1));
    Beginning.Camera camera =
        new Beginning.Camera(
            kind, pixels.get(0).intValue(), pixels.get(1).intValue(), over, across);
    Beginning.First first =
        new Beginning.First(raft, pond, what, red ? "red-leaf" : "green-leaf", on);
    List<String> files = WriteBook.write(new Beginning(zone, units, holes, camera, first), book);
    console.out().println("Book     " + book.toAbsolutePath().normalize());
    files.forEach(file -> console.out().println("  " + file));
    console.out().println("Next: read the files, mend what is a guess, and try");
    console.out().println("  raftgauge check --book " + book);
    return ExitCode.DONE;
  }
}
