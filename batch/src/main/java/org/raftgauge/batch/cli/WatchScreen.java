// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.jline.terminal.Terminal;
import org.raftgauge.batch.screen.PaintScreen;
import org.raftgauge.batch.screen.Signal;

/** Shows what a watch says: a full screen on a terminal, else a line for each photo. */
final class WatchScreen implements AutoCloseable {
  private static final String ENTER = "\u001b[?1049h\u001b[?25l";
  private static final String LEAVE = "\u001b[?25h\u001b[?1049l";

  private final Console console;
  private final Optional<Terminal> terminal;
  private String report = "";
  private String foot = "";
  private boolean entered;

  WatchScreen(Console console) throws IOException {
    this.console = console;
    this.terminal = console.terminal() ? Optional.of(TerminalSize.open()) : Optional.empty();
  }

  /** Names the address at which the report is shown, once the watch starts. */
  void reportAt(String address) {
    report = "; report at " + address;
  }

  /** Says what is watched. */
  void start(Path photos) {
    String text = "watching " + photos + report + "; Ctrl-C stops";
    if (terminal.isEmpty()) {
      console.out().println("Watch    " + text);
      return;
    }
    entered = true;
    console.out().print(ENTER);
    foot = "Ctrl-C stops";
    paint(new Signal(Signal.Kind.WAIT, "READY", text));
  }

  /** Shows a signal. */
  void show(String photo, Signal signal, int seen) {
    if (terminal.isEmpty()) {
      if (signal.kind() != Signal.Kind.WAIT) {
        console.out().println(signal.word() + "  " + photo + ": " + signal.advice());
      }
      return;
    }
    String now = LocalTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS).toString();
    foot = photo + "  ·  " + seen + (seen == 1 ? " photo" : " photos") + "  ·  " + now;
    paint(signal);
  }

  private void paint(Signal signal) {
    PaintScreen.Size size =
        new PaintScreen.Size(terminal.get().getWidth(), terminal.get().getHeight());
    console.out().print(PaintScreen.of(signal, size, foot));
    console.out().flush();
  }

  /** Says where results were published; the screen with the word stays as it is. */
  void published(Path folder) {
    note("Results  " + folder);
  }

  /** Says that something is wrong, and goes on. */
  void trouble(String what) {
    note(what);
  }

  private void note(String text) {
    if (terminal.isEmpty()) {
      console.out().println(text);
      return;
    }
    int width = Math.max(20, terminal.get().getWidth());
    String cut = text.length() > width ? text.substring(0, width) : text;
    console.out().print("\u001b[" + terminal.get().getHeight() + ";1H\u001b[0m\u001b[2K" + cut);
    console.out().flush();
  }

  /** Gives the terminal back and says how it stands. */
  void end(int seen, boolean open) {
    leave();
    console
        .out()
        .println(
            "Stopped  "
                + seen
                + (seen == 1 ? " photo" : " photos")
                + " measured and kept in the book"
                + (open ? "; \"raftgauge run\" on the folder publishes the results" : ""));
  }

  private void leave() {
    if (entered) {
      entered = false;
      console.out().print(LEAVE);
      console.out().flush();
    }
  }

  @Override
  public void close() throws IOException {
    leave();
    if (terminal.isPresent()) {
      terminal.get().close();
    }
  }
}
