// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.raftgauge.proving.set.TargetPairs;
import org.raftgauge.proving.set.TargetSet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Renders photos of a calibration target. */
@Command(
    name = "target",
    mixinStandardHelpOptions = true,
    description = "Renders photos of a printed chessboard under a known lens.")
final class TargetCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "Folder to write to.")
  private Path out;

  @Option(names = "--seed", description = "Whole number; the same seed gives the same bytes.")
  private long seed = 1;

  @Option(names = "--pair", description = "Photograph it with two cameras: left/ and right/.")
  private boolean pair;

  @Override
  public Integer call() throws IOException {
    if (pair) {
      TargetPairs.make(out, seed, path -> System.out.println(path));
    } else {
      TargetSet.make(out, seed, path -> System.out.println(path));
    }
    return 0;
  }
}
