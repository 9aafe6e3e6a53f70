// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Tells of the cluster module's commands, which {@link SparkEngine} hands on. */
@Command(
    name = "cluster",
    mixinStandardHelpOptions = true,
    header = "Exports and imports datasets that run --engine spark made.",
    description = {
      "%nA dataset holds the measures and reports of very many photos as Parquet files.",
      "The commands run on Apache Spark; each has its own --help.%n",
      "  raftgauge cluster export DATASET --out FOLDER",
      "      Writes the reports as the CSV files that a run on a folder writes.",
      "  raftgauge cluster import DATASET --book BOOK",
      "      Takes the measures into the history of a farm's book."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n")
final class ClusterCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
