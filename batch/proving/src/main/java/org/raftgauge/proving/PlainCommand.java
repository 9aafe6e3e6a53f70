// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.accuracy.PlainScript;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Measures a set with the plain script. */
@Command(
    name = "plain",
    mixinStandardHelpOptions = true,
    description = "Measures a rendered set with a plain script, as a yardstick.")
final class PlainCommand implements Callable<Integer> {
  @Option(names = "--set", required = true, description = "Folder of a rendered set.")
  private Path set;

  @Option(names = "--out", required = true, description = "CSV file to write.")
  private Path out;

  @Override
  public Integer call() throws IOException {
    Files.writeString(out, String.join("\r\n", PlainScript.measure(set)) + "\r\n");
    return 0;
  }
}
