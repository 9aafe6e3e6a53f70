// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.UsageMessageSpec;

class HelpWidthTest {
  /** A terminal's 80 columns less one: picocli breaks a line that would fill the last. */
  private static final int WIDTH = 79;

  @Test
  void noLineOfAHelpPageThatWasBrokenByHandIsBrokenAgain() {
    List<String> tooLong = new ArrayList<>();
    collect(
        Raftgauge.line(new String[] {"completion"}, new BookWorkplace(), Console.system()),
        tooLong);
    assertEquals("", String.join("\n", tooLong));
  }

  private static void collect(CommandLine command, List<String> tooLong) {
    UsageMessageSpec page = command.getCommandSpec().usageMessage();
    String name = command.getCommandSpec().qualifiedName();
    Stream.of(page.description(), page.footer())
        .flatMap(Stream::of)
        .flatMap(text -> text.replace("%n", "\n").replace("%%", "%").lines())
        .filter(line -> line.length() > WIDTH)
        .forEach(line -> tooLong.add(name + ": " + line));
    command.getCommandSpec().options().stream()
        .filter(option -> option.description().length > 1)
        .forEach(option -> tooLong.add(name + " " + option.longestName() + ": broken by hand"));
    command.getSubcommands().values().forEach(sub -> collect(sub, tooLong));
  }
}
