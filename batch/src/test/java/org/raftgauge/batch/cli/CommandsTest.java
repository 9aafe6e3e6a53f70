// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

class CommandsTest {

  @Test
  void commandsThatACallDoesNotNameAreListedAsThoseItNames() {
    String listed = line("--help").getUsageMessage();

    assertEquals(line("first", "second").getUsageMessage(), listed);
  }

  @Test
  void onlyNamedCommandsHaveTheirOptions() {
    CommandLine line = line("second", "--size", "3");

    assertEquals(Set.of(), options(line, "first"));
    assertEquals(Set.of("--size"), options(line, "second"));
  }

  @Test
  void completionAndWordsFromFilesMayNeedAnyCommand() {
    for (String word : List.of("completion", "@words.txt")) {
      CommandLine line = line(word);

      assertEquals(Set.of("--width"), options(line, "first"), word);
      assertEquals(Set.of("--size"), options(line, "second"), word);
    }
  }

  private static CommandLine line(String... args) {
    return new Commands(new CommandLine(new Root()), args)
        .add(First.class, First::new)
        .add(Second.class, () -> new CommandLine(new Second()))
        .line();
  }

  private static Set<String> options(CommandLine line, String command) {
    return line.getSubcommands().get(command).getCommandSpec().optionsMap().keySet();
  }

  @Command(name = "root")
  static final class Root {}

  @Command(name = "first", header = "Comes first.")
  static final class First {
    @Option(names = "--width")
    int width;
  }

  @Command(
      name = "second",
      header = {"Comes second,", "in two lines."})
  static final class Second {
    @Option(names = "--size")
    int size;
  }
}
