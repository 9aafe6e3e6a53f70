// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.PrintStream;
import java.lang.reflect.Method;

/**
 * Where the program speaks.
 *
 * @param out results
 * @param err problems and progress
 * @param terminal whether a person watches, so that a progress bar makes sense
 */
public record Console(PrintStream out, PrintStream err, boolean terminal) {

  /** Returns the process's own. */
  public static Console system() {
    return new Console(System.out, System.err, isTerminal());
  }

  // From Java 22 on there is a console without a terminal too, and a method that tells.
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isTerminal() {
    java.io.Console console = System.console();
    if (console == null || Runtime.version().feature() < 22) {
      return console != null;
    }
    try {
      Method method = java.io.Console.class.getMethod("isTerminal");
      return (boolean) method.invoke(console);
    } catch (ReflectiveOperationException e) {
      return false;
    }
  }
}
