// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program as it runs on Apache Spark; {@code raftgauge} starts it, or {@code spark-submit}. */
@Command(
    name = "raftgauge",
    mixinStandardHelpOptions = true,
    header = "Measures very many raft photos on Apache Spark.",
    subcommands = {RunOnSpark.class, ExportCommand.class, ImportCommand.class})
public final class Cluster implements Runnable {
  /** The call, the book or the folder is wrong; nothing was published. */
  static final int WRONG_INPUT = 2;

  /** The run failed; what it measured is kept for the next. */
  static final int FAILED = 3;

  @Spec private CommandSpec spec;

  private Cluster() {}

  /**
   * Runs a command and ends the process with its exit code.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    System.exit(run(args));
  }

  /**
   * Runs a command.
   *
   * @param args the command line
   * @return 0 done, 2 wrong call or book, 3 failed
   */
  public static int run(String... args) {
    return new CommandLine(new Cluster())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setOut(new PrintWriter(System.out, true, StandardCharsets.UTF_8))
        .setErr(new PrintWriter(System.err, true, StandardCharsets.UTF_8))
        .setParameterExceptionHandler((e, a) -> wrongCall(e))
        .setExecutionExceptionHandler((e, c, p) -> failed(e, c.getCommandSpec()))
        .execute(args);
  }

  @Override
  public void run() {
    spec.commandLine().usage(System.out);
  }

  private static int wrongCall(ParameterException e) {
    System.err.println(e.getMessage());
    return WRONG_INPUT;
  }

  private static int failed(Exception e, CommandSpec command) {
    if (e instanceof InputException input) {
      for (Problem problem : input.problems()) {
        System.err.println(problem);
      }
      return WRONG_INPUT;
    }
    boolean run = command.name().equals("run");
    System.err.println(
        (run ? "The run failed, nothing was published" : command.qualifiedName() + " failed")
            + ": "
            + e);
    e.printStackTrace(System.err);
    return FAILED;
  }
}
