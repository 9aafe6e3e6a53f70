// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.samples;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;

/** The README's commands, and the program to run them. */
final class Readme {
  static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
  static final String LAUNCHER = "batch/raftgauge";
  private static final Pattern BLOCK = Pattern.compile("(?s)```sh\n(.*?)```");

  private Readme() {}

  /** What a command said, and its exit code. */
  record Said(int code, String out, String err) {}

  static String text() throws IOException {
    return Files.readString(ROOT.resolve("README.md")).replace("\r\n", "\n");
  }

  /** Returns the lines of the blocks marked sh, without comments. */
  static List<String> commands() throws IOException {
    return commands(text());
  }

  /** Returns the same of another page. */
  static List<String> commands(String page) {
    List<String> commands = new ArrayList<>();
    Matcher blocks = BLOCK.matcher(page);
    while (blocks.find()) {
      for (String line : blocks.group(1).lines().toList()) {
        String command = line.replaceFirst("\\s+#.*", "").strip();
        if (!command.isEmpty() && !command.startsWith("#")) {
          commands.add(command);
        }
      }
    }
    return commands;
  }

  /** Returns the command that runs the samples. */
  static String sampleRun() throws IOException {
    List<String> runs =
        commands().stream().filter(command -> command.startsWith(LAUNCHER + " run ")).toList();
    if (runs.size() != 1) {
      throw new AssertionError("the README has not one run command: " + runs);
    }
    return runs.get(0);
  }

  /** Returns a command's arguments, with the checkout's folders made absolute. */
  static List<String> arguments(String command) {
    return Arrays.stream(command.split("\\s+", -1))
        .skip(1)
        .map(word -> word.startsWith("sample-") ? ROOT.resolve(word).toString() : word)
        .toList();
  }

  /** Runs the program in this process. */
  static Said run(List<String> arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    int code = Raftgauge.run(arguments.toArray(String[]::new), new BookWorkplace(), console);
    return new Said(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
