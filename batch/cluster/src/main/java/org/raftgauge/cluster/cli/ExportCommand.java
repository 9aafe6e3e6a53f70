// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.apache.spark.sql.SparkSession;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.run.ExportDataset;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a dataset as CSV files. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    header = "Writes a dataset's reports as the CSV files of a run on a folder.")
final class ExportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DATASET", description = "Folder or URI of the dataset.")
  private String place;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      required = true,
      description = "New or empty folder for the files.")
  private Path out;

  @Mixin private MasterOption master;

  @Override
  public Integer call() throws InputException, IOException {
    if (Files.exists(out)) {
      try (Stream<Path> files = Files.list(out)) {
        if (files.findAny().isPresent()) {
          throw new InputException(
              List.of(new Problem("OUT " + out, "is not empty", "give a new or empty folder")));
        }
      }
    }
    SparkSession spark = master.start();
    try {
      DatasetFolder dataset = DatasetFolder.read(place, spark.sparkContext().hadoopConfiguration());
      new ExportDataset(spark, dataset).to(out);
      System.out.println("Exported to " + out.toAbsolutePath().normalize());
      return 0;
    } finally {
      spark.stop();
    }
  }
}
