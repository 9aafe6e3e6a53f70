// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.tray.TraysPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Renders trays of seedlings and writes a page of what the program says of them. */
@Command(
    name = "trays",
    mixinStandardHelpOptions = true,
    description =
        "Renders propagation trays day by day and writes a page of share emerged, doubles and empty"
            + " cells as the program finds them, beside the truth. Photos in WORK are used again.")
final class TraysCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "Folder for the photos.")
  private Path work;

  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Option(names = "--each", description = "Trays of each kind. Default: ${DEFAULT-VALUE}.")
  private int each = 1;

  @Option(names = "--seed", description = "Of everything that varies. Default: ${DEFAULT-VALUE}.")
  private long seed = 5501;

  @Override
  public Integer call() throws IOException {
    String stamp = "commit " + Commit.of(root);
    String page = TraysPage.of(new TraysPage.Asked(work, each, seed, stamp), System.err::println);
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
