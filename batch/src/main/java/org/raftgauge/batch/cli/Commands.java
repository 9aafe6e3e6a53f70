// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Adds the commands of the program. Of those that a call does not name only name and header are
 * set, which is what lists of commands show: reading the options of all takes longer than most
 * calls.
 */
final class Commands {
  private final CommandLine line;
  private final List<String> args;

  /** Whether every command is needed: to complete any, or as words of a file may name any. */
  private final boolean all;

  Commands(CommandLine line, String[] args) {
    this.line = line;
    this.args = List.of(args);
    this.all = this.args.stream().anyMatch(a -> a.startsWith("@") || a.equals("completion"));
  }

  /**
   * Adds a command.
   *
   * @param type its class
   * @param whole makes it, or its command line
   */
  Commands add(Class<?> type, Supplier<Object> whole) {
    Command about = type.getAnnotation(Command.class);
    boolean named = all || args.contains(about.name());
    line.addSubcommand(about.name(), named ? whole.get() : nameOnly(about));
    return this;
  }

  private static CommandLine nameOnly(Command about) {
    CommandSpec spec = CommandSpec.create().name(about.name());
    spec.usageMessage().header(about.header());
    return new CommandLine(spec);
  }

  /** Returns the program's line with its commands. */
  CommandLine line() {
    return line;
  }
}
