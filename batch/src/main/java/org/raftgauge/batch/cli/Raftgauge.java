// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.run.ProgramVersion;
import org.raftgauge.batch.store.SqliteLibrary;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;

/** The program: from a folder of raft photos to leaf area per planting site. */
@Command(
    name = "raftgauge",
    mixinStandardHelpOptions = true,
    versionProvider = Raftgauge.Version.class,
    subcommands = CommandLine.HelpCommand.class,
    header = {
      "Measures leafy crops on floating rafts from overhead photos: a folder of",
      "photos in, projected leaf area (cm2) of every planting site out, with a",
      "picture of each photo that shows what was measured.",
      ""
    },
    synopsisHeading = "Usage:%n  ",
    commandListHeading = "%nCommands:%n",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Examples:",
      "  raftgauge check --book my-farm photos/tonight",
      "      Reads the crop book and the photo list, measures nothing, and lists",
      "      everything that is wrong with them.",
      "  raftgauge run photos/tonight --book my-farm",
      "      Measures tonight's photos; the results go to a new folder in",
      "      my-farm/runs, and the book remembers them.",
      "  raftgauge run photos/tonight --book my-farm --out results",
      "      The same, with the results in the folder \"results\".",
      "  raftgauge judge --book my-farm --on 2026-04-16 --out that-evening",
      "      Judges an evening from what the book remembers, without photos.",
      "  raftgauge grader fit --book my-farm --crop butterhead",
      "      Learns weights from plants that you weighed; raftgauge grader picks says",
      "      which to weigh.",
      "  raftgauge forecast --book my-farm --on 2026-04-16 --out forecast",
      "      What rafts will weigh and when they are ready; raftgauge look-back says",
      "      how far off earlier forecasts were.",
      "  raftgauge seen inspect-lagging/DR-0401/2026-04-06/A1 --until 2026-04-20",
      "      Puts a row of the worklist off until a day.",
      "  raftgauge help run",
      "      All options of run.",
      "",
      "The crop book is a folder of plain files that you keep: stations, layouts,",
      "crops, plantings. Areas are what the camera sees; weights need weighings.",
      "",
      "Exit codes:",
      "  0  done (photos to take again are listed; they are no failure)",
      "  2  the call, the book or the folder is wrong; nothing was written",
      "  3  it failed; a run has published nothing then"
    })
public final class Raftgauge implements Runnable {
  private static final String FAILED_RUN = "The run failed, nothing was published";

  @Spec private CommandSpec spec;

  private Raftgauge() {}

  /**
   * Runs a command and ends the process with its exit code.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    SqliteLibrary.unpackPrivately();
    System.exit(run(args, new BookWorkplace(), Console.system()));
  }

  /**
   * Runs a command.
   *
   * @param args the command line
   * @param workplace opens book and photos
   * @param console where to speak
   * @return the exit code: 0 done, 2 wrong call or book, 3 failed
   */
  public static int run(String[] args, Workplace workplace, Console console) {
    Optional<List<String>> onSpark = SparkEngine.asked(args);
    if (onSpark.filter(left -> !left.isEmpty()).isPresent()) {
      return onSpark(onSpark.get(), console);
    }
    String[] call = helpLast(args);
    return line(call, workplace, console).execute(call);
  }

  /** Asks a command of a command for its help by its option: "help" itself knows no such names. */
  private static String[] helpLast(String[] args) {
    if (args.length < 3 || !args[0].equals("help")) {
      return args;
    }
    String[] call = Arrays.copyOfRange(args, 1, args.length + 1);
    call[args.length - 1] = "--help";
    return call;
  }

  /**
   * Returns the command with its subcommands; those that the call does not name only by name and
   * header.
   */
  static CommandLine line(String[] args, Workplace workplace, Console console) {
    return new Commands(new CommandLine(new Raftgauge()), args)
        .add(RunCommand.class, () -> new RunCommand(workplace, console))
        .add(CheckCommand.class, () -> new CheckCommand(workplace, console))
        .add(ImportCommand.class, () -> new ImportCommand(workplace, console))
        .add(JudgeCommand.class, () -> new JudgeCommand(workplace, console))
        .add(AgreeCommand.class, () -> new AgreeCommand(workplace, console))
        .add(TeachCommand.class, () -> new TeachCommand(console))
        .add(GraderCommand.class, () -> GraderCommand.with(console))
        .add(StationCommand.class, () -> StationCommand.line(console))
        .add(ForecastCommand.class, () -> new ForecastCommand(console))
        .add(LookBackCommand.class, () -> new LookBackCommand(console))
        .add(NewCommand.class, () -> new NewCommand(console))
        .add(SeenCommand.class, () -> new SeenCommand(workplace, console))
        .add(ClusterCommand.class, ClusterCommand::new)
        .add(AmendCommand.class, () -> AmendCommand.line(workplace, console))
        .add(HistoryCommand.class, () -> HistoryCommand.line(console))
        .add(CompletionCommand.class, () -> new CompletionCommand(console))
        .line()
        .registerConverter(LocalDate.class, Typed::date)
        .registerConverter(Path.class, Typed::path)
        .registerConverter(ZoneId.class, Typed::zone)
        .registerConverter(int.class, Typed::whole)
        .registerConverter(long.class, Typed::longWhole)
        .registerConverter(double.class, Typed::number)
        .setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8))
        .setParameterExceptionHandler((e, a) -> wrongCall(e, console))
        .setExecutionExceptionHandler((e, c, p) -> failed(e, c.getParseResult(), console));
  }

  private static int onSpark(List<String> args, Console console) {
    try {
      return SparkEngine.here().run(args);
    } catch (InputException | IOException e) {
      return failed(e, FAILED_RUN, console);
    }
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  private static int wrongCall(ParameterException e, Console console) {
    console.err().println(e.getMessage() + Suggestion.of(e));
    console
        .err()
        .println("See \"" + e.getCommandLine().getCommandSpec().qualifiedName() + " --help\".");
    return ExitCode.WRONG_INPUT;
  }

  private static int failed(Exception e, ParseResult call, Console console) {
    CommandSpec command = call.commandSpec();
    String what = command.qualifiedName() + " failed";
    int code = failed(e, command.name().equals("run") ? FAILED_RUN : what, console);
    if (code == ExitCode.FAILED && call.hasMatchedOption("--verbose")) {
      e.printStackTrace(console.err());
    } else if (code == ExitCode.FAILED) {
      console.err().println("Run again with --verbose to see where.");
    }
    return code;
  }

  /** Says what is wrong with the call, or what failed though nothing is. */
  private static int failed(Exception e, String what, Console console) {
    if (e instanceof InputException input) {
      input.problems().forEach(console.err()::println);
      return ExitCode.WRONG_INPUT;
    }
    console.err().println(what + ": " + FailureText.of(e));
    return ExitCode.FAILED;
  }

  /** Says the program's version. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {
        "raftgauge " + ProgramVersion.current().version(), "Java " + Runtime.version()
      };
    }
  }
}
