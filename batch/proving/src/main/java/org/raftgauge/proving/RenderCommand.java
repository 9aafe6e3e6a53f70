// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.set.RenderSet;
import org.raftgauge.proving.set.SetName;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Renders a set of photos. */
@Command(
    name = "render",
    mixinStandardHelpOptions = true,
    description = "Renders a set of photos with truth, labels and a crop book.")
final class RenderCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "Folder to write to.")
  private Path out;

  @Option(names = "--set", required = true, description = "One of: ${COMPLETION-CANDIDATES}.")
  private SetName set;

  @Option(names = "--seed", description = "Whole number; the same seed gives the same bytes.")
  private long seed = 1;

  @Option(names = "--photos", description = "At most so many photos, drawn from the set.")
  private int photos = Integer.MAX_VALUE;

  @Option(names = "--megapixels", description = "Size of each photo. Default: ${DEFAULT-VALUE}.")
  private double megapixels = 2.5;

  @Option(names = "--look", description = "Only photos of this condition; may be repeated.")
  private List<String> looks = List.of();

  @Override
  public Integer call() throws IOException {
    SetName.Order order = new SetName.Order(seed, photos, megapixels, looks);
    RenderSet.make(out, set, order, path -> System.out.println(path));
    return 0;
  }
}
