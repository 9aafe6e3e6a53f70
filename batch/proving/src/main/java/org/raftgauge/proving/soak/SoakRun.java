// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.soak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;

/** The process of a soak: one run of the program, metered. */
final class SoakRun {

  private SoakRun() {}

  /**
   * Runs.
   *
   * @param args the farm's folder; photos between two notes; then options of {@code run}
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    SoakFarm farm = new SoakFarm(folder, 0);
    SoakMeter meter = new SoakMeter(new BookWorkplace(), Integer.parseInt(args[1]));
    String[] call = new String[5 + args.length - 2];
    call[0] = "run";
    call[1] = farm.photos().toString();
    call[2] = "--book";
    call[3] = farm.book().toString();
    call[4] = "--out=" + folder.resolve("run");
    System.arraycopy(args, 2, call, 5, args.length - 2);
    int code = Raftgauge.run(call, meter, Console.system());
    meter.note(0);
    Files.writeString(folder.resolve("soak.csv"), meter.notes());
    System.exit(code);
  }
}
