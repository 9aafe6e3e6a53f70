// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;

/** Opens the terminal, to ask for its size. */
final class TerminalSize {
  /** Width of a terminal that does not tell. */
  private static final int USUAL_COLUMNS = 80;

  private TerminalSize() {}

  /**
   * Opens the terminal without touching signals: with the library's own handling Ctrl-C would end
   * the process before it has cleaned up.
   */
  static Terminal open() throws IOException {
    return TerminalBuilder.builder().dumb(true).nativeSignals(false).build();
  }

  /** Returns the width of the terminal. */
  static int columns() {
    try (Terminal terminal = open()) {
      return terminal.getWidth() > 0 ? terminal.getWidth() : USUAL_COLUMNS;
    } catch (IOException none) {
      return USUAL_COLUMNS;
    }
  }
}
