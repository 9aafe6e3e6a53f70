// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.List;
import org.raftgauge.core.problem.NearestSpelling;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Guesses which command or option was meant by one that is not known. */
final class Suggestion {

  private Suggestion() {}

  /** Returns a question to put behind the message, or an empty text. */
  static String of(ParameterException e) {
    if (!(e instanceof UnmatchedArgumentException unmatched)
        || unmatched.getUnmatched().isEmpty()) {
      return "";
    }
    String found = unmatched.getUnmatched().get(0);
    String dashes = found.startsWith("-") ? "--" : "";
    List<String> known =
        dashes.isEmpty()
            ? List.copyOf(e.getCommandLine().getSubcommands().keySet())
            : options(e.getCommandLine());
    return NearestSpelling.of(found.replaceFirst("^-+", ""), known)
        .map(name -> "; did you mean \"" + dashes + name + "\"?")
        .orElse("");
  }

  /** Returns the long options without their dashes, which would count as right letters. */
  private static List<String> options(CommandLine line) {
    return line.getCommandSpec().options().stream()
        .map(option -> option.longestName())
        .filter(name -> name.startsWith("--"))
        .map(name -> name.substring(2))
        .toList();
  }
}
