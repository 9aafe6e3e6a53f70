// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.ArrayList;
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
    return NearestSpelling.of(unmatched.getUnmatched().get(0), names(e.getCommandLine()))
        .map(name -> "; did you mean \"" + name + "\"?")
        .orElse("");
  }

  private static List<String> names(CommandLine line) {
    List<String> names = new ArrayList<>(line.getSubcommands().keySet());
    line.getCommandSpec().options().forEach(option -> names.addAll(List.of(option.names())));
    return names;
  }
}
