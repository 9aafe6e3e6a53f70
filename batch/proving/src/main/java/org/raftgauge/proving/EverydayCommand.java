// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.everyday.EverydayPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Times what a person waits for and writes a page of it. */
@Command(
    name = "everyday",
    mixinStandardHelpOptions = true,
    description = {
      "Opens the page of a large pretended farm in a Chromium without a screen, drops sample photos",
      "before a watch, and writes a page of how long both take. Needs Linux and a chromium on the",
      "PATH; run it in the project's folder and keep the machine quiet meanwhile."
    })
final class EverydayCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "The page to write (Markdown).")
  private Path out;

  @Option(names = "--work", required = true, description = "An empty folder.")
  private Path work;

  @Option(names = "--rafts", description = "Of the large page. Default: ${DEFAULT-VALUE}.")
  private int rafts = 500;

  @Option(names = "--seed", description = "Of its farm. Default: ${DEFAULT-VALUE}.")
  private long seed = 17;

  @Override
  public Integer call() throws Exception {
    Files.createDirectories(work);
    String page =
        EverydayPage.of(
            new EverydayPage.Asked(work, rafts, seed, "commit " + Commit.of(Path.of("."))));
    Files.writeString(out, page);
    System.out.print(page);
    return 0;
  }
}
