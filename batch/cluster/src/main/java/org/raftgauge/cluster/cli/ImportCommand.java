// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.apache.spark.sql.SparkSession;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.run.ImportDataset;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes a dataset's measures into a farm's history. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Takes a dataset's measures into the history of a farm's crop book.")
final class ImportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DATASET", description = "Folder or URI of the dataset.")
  private String place;

  @Option(
      names = "--book",
      paramLabel = "BOOK",
      required = true,
      description = "Folder of the crop book.")
  private Path book;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = {
        "How long to wait while another run uses the same book. Default: ${DEFAULT-VALUE}."
      })
  private long waitS = 600;

  @Mixin private MasterOption master;

  @Override
  public Integer call() throws InputException, IOException {
    if (!Files.isRegularFile(book.resolve("book.yaml"))) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + book, "is no crop book", "give the folder that holds book.yaml")));
    }
    SparkSession spark = master.start();
    try {
      DatasetFolder dataset = DatasetFolder.read(place, spark.sparkContext().hadoopConfiguration());
      ImportDataset.Outcome outcome =
          new ImportDataset(spark, dataset)
              .into(
                  book,
                  Duration.ofSeconds(waitS),
                  holder -> System.err.println("waiting for " + holder));
      System.out.println(
          "Imported " + outcome.added() + " photos; " + outcome.known() + " known already");
      return 0;
    } finally {
      spark.stop();
    }
  }
}
