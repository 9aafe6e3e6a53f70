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
import org.raftgauge.batch.cli.Answers.Asked;
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
      "%nAsks for what no option says, on a terminal, and again where an",
      "answer is none. The folder must be new or empty; nothing is ever overwritten.",
      "Lengths in mm."
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
  private static final Asked ZONE =
      new Asked("--time-zone", "Time zone of the farm", ZoneId.systemDefault().getId());

  private final Console console;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "BOOK", description = "The new book's folder.")
  private Path book;

  @Option(
      names = "--time-zone",
      paramLabel = "ZONE",
      description = "The farm's, as in Europe/Lisbon. Default: this machine's.")
  private String zone;

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
      description =
          "Ids of the first rafts: one, several with commas, or a range as in R-001..R-012."
              + " Default: R-001.")
  private String raft;

  @Option(names = "--pond", paramLabel = "POND", description = "Their pond. Default: P1.")
  private String pond;

  @Option(
      names = "--transplanted",
      paramLabel = "DATE",
      description = "When they were planted. Default: today.")
  private String transplanted;

  @Option(names = "--verbose", description = "Show where the program failed, if it does.")
  @SuppressWarnings("UnusedVariable") // Raftgauge reads it from the parsed line
  private boolean verbose;

  NewCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    WriteBook.refuseTaken(book);
    Answers answers = new Answers(spec.commandLine(), console);
    Beginning.Holes holes = holes(answers);
    while (!holes.fit() && console.terminal() && asksForHoles()) {
      console.out().println("  " + holes.misfit());
      holes = holes(answers);
    }
    Beginning.Camera camera = camera(answers);
    ZoneId farm = answers.answer(ZONE, zone, Typed::zone);
    Beginning.First first = first(answers, farm);
    Beginning beginning = new Beginning(farm, units, holes, camera, first);
    List<String> files = WriteBook.write(beginning, book);
    console.out().println("Book     " + book.toAbsolutePath().normalize());
    files.forEach(file -> console.out().println("  " + file));
    if (kind == Station.Kind.FIXED && first.rafts().size() > 1) {
      console.out().println("Only the first raft has a slot yet: see \"raftgauge station slots\".");
    }
    beginning.doubts().forEach(doubt -> console.out().println("Look at: " + doubt));
    console.out().println("Next: read the files, mend what is a guess, and try");
    console.out().println("  raftgauge check --book " + quoted(book.toString()));
    return ExitCode.DONE;
  }

  /** Puts a path with blanks into double quotes, as a shell wants it. */
  private static String quoted(String path) {
    return path.contains(" ") ? "\"" + path + "\"" : path;
  }

  private boolean asksForHoles() {
    return board == null || rows == null || columns == null || pitch == null;
  }

  private Beginning.Holes holes(Answers answers) throws IOException {
    List<Double> size = answers.sizes(Asked.of("--board", "Board, width x length in mm"), board, 2);
    int rowCount = answers.count(Asked.of("--rows", "Rows of holes (A, B, C, ...)"), rows);
    int columnCount =
        answers.count(Asked.of("--columns", "Columns of holes (1, 2, 3, ...)"), columns);
    List<Double> apart = answers.sizes(Asked.of("--pitch", "From hole to hole, in mm"), pitch, 1);
    return new Beginning.Holes(
        size.get(0), size.get(1), rowCount, columnCount, apart.get(0), apart.get(apart.size() - 1));
  }

  private Beginning.Camera camera(Answers answers) throws IOException {
    List<Double> pixels =
        answers.sizes(Asked.of("--photo", "Photo, width x height in pixels"), photo, 2);
    double over =
        answers
            .sizes(Asked.of("--height", "Lens over the top of the board, in mm"), height, 1)
            .get(0);
    OptionalDouble across =
        answers.maybe(
            Asked.of(
                "--view", "Deck that the photo's width shows, in mm (none: the lens is a guess)"),
            view);
    return new Beginning.Camera(
        kind, pixels.get(0).intValue(), pixels.get(1).intValue(), over, across);
  }

  private Beginning.First first(Answers answers, ZoneId farm) throws IOException {
    String what = answers.name(new Asked("--crop", "First crop", "lettuce"), crop);
    List<String> rafts =
        answers.answer(
            new Asked("--raft", "Rafts that bear it (R-001, R-005 or R-001..R-012)", "R-001"),
            raft,
            RaftNames::of);
    String water = answers.name(new Asked("--pond", "Pond that they float on", "P1"), pond);
    LocalDate day =
        answers.answer(
            new Asked("--transplanted", "Day of transplant", LocalDate.now(farm).toString()),
            transplanted,
            Typed::date);
    return new Beginning.First(rafts, water, what, red ? "red-leaf" : "green-leaf", day);
  }
}
