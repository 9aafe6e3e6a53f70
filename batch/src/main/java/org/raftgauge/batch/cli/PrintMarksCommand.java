// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.raftgauge.batch.print.LabelGrid;
import org.raftgauge.batch.print.Mark;
import org.raftgauge.batch.print.Paper;
import org.raftgauge.batch.print.PrintMarks;
import org.raftgauge.batch.station.RaftMarks;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints raft tags and corner markers. */
@Command(
    name = "marks",
    mixinStandardHelpOptions = true,
    header = "Makes a PDF of raft tags and corner markers.",
    description = {
      "%nGive raft ids, or let the book tell them: then sizes are those of each raft's",
      "layout. Each raft gets its tag and the corner markers 0 to 3."
    },
    synopsisHeading = "%nUsage:%n  ",
    parameterListHeading = "%nWhat to print:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge station print marks --book my-farm --out marks.pdf",
      "",
      "LABELS describes a sheet of labels: COLUMNSxROWS:WIDTHxHEIGHT in mm, as in",
      "2x4:99.1x67.7, with @LEFT,TOP where the first label does not lie centred."
    })
final class PrintMarksCommand implements Callable<Integer> {
  private final Console console;

  @Parameters(paramLabel = "RAFT", arity = "0..*", description = "Raft ids.")
  private List<String> rafts = new ArrayList<>();

  @Mixin private BookOptions options;

  @Option(names = "--pond", paramLabel = "POND", description = "Only rafts of this pond.")
  private List<String> ponds = new ArrayList<>();

  @Option(names = "--layout", paramLabel = "LAYOUT", description = "Only rafts of this layout.")
  private List<String> layouts = new ArrayList<>();

  @Option(
      names = "--tag-side",
      paramLabel = "MM",
      description =
          "Side of a tag without its white rim, where no book says it."
              + " Default: ${DEFAULT-VALUE}.")
  private double tagSideMm = 60;

  @Option(
      names = "--marker-side",
      paramLabel = "MM",
      description =
          "Side of a marker's black square, where no book says it." + " Default: ${DEFAULT-VALUE}.")
  private double markerSideMm = 36;

  @Option(
      names = "--only",
      paramLabel = "KIND",
      description = "Only one of ${COMPLETION-CANDIDATES}.")
  private RaftMarks.Kind only;

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      description = "One of ${COMPLETION-CANDIDATES}. Default: ${DEFAULT-VALUE}.")
  private Paper paper = Paper.A4;

  @Option(names = "--labels", paramLabel = "LABELS", description = "A sheet of labels; see below.")
  private String labels;

  @Option(names = "--out", paramLabel = "FILE", required = true, description = "The PDF to write.")
  private Path out;

  PrintMarksCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    if (!(tagSideMm > 0 && markerSideMm > 0)) {
      throw problem(
          "--tag-side, --marker-side", "must be above 0 mm", "give the size on the board");
    }
    Set<String> ids = new LinkedHashSet<>(rafts);
    boolean alone = !ids.isEmpty() && !options.isNamed();
    RaftMarks marks =
        alone
            ? RaftMarks.of(ids, new RaftMarks.Sides(tagSideMm, markerSideMm))
            : RaftMarks.ofBook(
                options.find(console),
                new RaftMarks.Wanted(ids, Set.copyOf(ponds), Set.copyOf(layouts)));
    marks.without().forEach(console.err()::println);
    List<PrintMarks.Batch> batches = batches(marks);
    if (batches.isEmpty()) {
      throw problem(
          alone ? "RAFT" : "--book",
          "gives no raft to print marks for",
          "give raft ids, or a book with rafts whose layouts have markers or a tag");
    }
    OutFiles.isNew("--out", out);
    OutFiles.makeParent(out);
    int pages = PrintMarks.print(batches, out);
    console
        .out()
        .println(
            "Marks    "
                + out
                + " ("
                + batches.stream().mapToInt(b -> b.marks().size()).sum()
                + " marks, "
                + pages
                + (pages == 1 ? " page)" : " pages)"));
    console.out().println("To do    print at 100 %, measure the check line before you cut");
    return ExitCode.DONE;
  }

  private List<PrintMarks.Batch> batches(RaftMarks marks) throws InputException {
    List<PrintMarks.Batch> batches = new ArrayList<>();
    for (RaftMarks.Kind kind : RaftMarks.Kind.values()) {
      List<Mark> some = marks.marks(kind);
      if (!some.isEmpty() && (only == null || only == kind)) {
        batches.add(new PrintMarks.Batch(some, grid(some)));
      }
    }
    return batches;
  }

  private LabelGrid grid(List<Mark> marks) throws InputException {
    Optional<LabelGrid> grid =
        labels == null ? PrintMarks.fields(marks, paper) : LabelGrid.parse(labels, paper);
    if (grid.isEmpty()) {
      throw labels == null
          ? problem(
              "--paper " + paper,
              PrintMarks.tooLarge(marks, paper),
              "print smaller marks: --tag-side and --marker-side, or side_mm of the layout"
                  + (paper == Paper.A3 ? "" : "; the largest sheet is A3"))
          : problem(
              "--labels " + labels,
              "is no sheet of labels that fits " + paper,
              "write it as in 2x4:99.1x67.7");
    }
    Optional<String> tooLarge = PrintMarks.tooLarge(marks, grid.get());
    if (tooLarge.isPresent()) {
      throw problem(
          "--labels " + labels, tooLarge.get(), "take larger labels, or print on plain sheets");
    }
    return grid.get();
  }

  private static InputException problem(String place, String found, String remedy) {
    return new InputException(List.of(new Problem(place, found, remedy)));
  }
}
