// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.apache.spark.sql.SparkSession;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.cluster.first.FirstPass;
import org.raftgauge.cluster.run.ClusterRun;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Measures photos on a cluster. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    header = "Measures photos on a cluster and publishes a dataset of Parquet files.",
    description = {
      "%nA photo that an earlier run into OUT measured by the same program, under the same",
      "station, layout, colour and height model, is not measured again. A run that was",
      "killed can simply be run again."
    },
    sortOptions = false)
final class RunOnSpark implements Callable<Integer> {
  private static final long MB = 1L << 20;

  @Parameters(
      paramLabel = "PHOTOS",
      description = "Folder or URI (hdfs://, s3a://, ...) of the photos, with all its folders.")
  private String photos;

  @Option(
      names = "--book",
      paramLabel = "BOOK",
      required = true,
      description = "Folder of the crop book, on the machine that starts the run.")
  private Path book;

  @Option(
      names = "--out",
      paramLabel = "OUT",
      required = true,
      description = "Folder or URI of the dataset: new, empty, or that of earlier runs.")
  private String out;

  @Mixin private MasterOption master;

  @Option(
      names = "--listing",
      paramLabel = "FILE",
      description = {
        "List of photos instead of a walk through PHOTOS: a path below it a line, and after a"
            + " comma its bytes, where known."
      })
  private Path listing;

  @Option(
      names = "--evenings",
      paramLabel = "WHICH",
      description = "Evenings to judge: latest, all or none. Default: ${DEFAULT-VALUE}.")
  private ClusterRun.Evenings evenings = ClusterRun.Evenings.LATEST;

  @Option(
      names = "--partitions",
      paramLabel = "N",
      description = "Parts that a round is cut into. Default: by --partition-mb, 4 a core or more.")
  private Integer partitions;

  @Option(
      names = "--partition-mb",
      paramLabel = "MB",
      description = "Most photo bytes a part. Default: ${DEFAULT-VALUE}.")
  private int partitionMb = 256;

  @Option(
      names = "--round",
      paramLabel = "N",
      description = "Photos that are measured before they are kept. Default: ${DEFAULT-VALUE}.")
  private int round = 200_000;

  @Override
  public Integer call() throws InputException, IOException {
    if (round < 1 || partitionMb < 1 || (partitions != null && partitions < 1)) {
      throw new InputException(
          List.of(
              new Problem(
                  "--partitions, --partition-mb, --round", "are numbers", "write 1 or more")));
    }
    if (!Files.isDirectory(book)) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + book, "does not exist", "give the folder that holds book.yaml")));
    }
    Workplace.OpenBook open = new BookWorkplace().open(book);
    open.problems().forEach(System.err::println);
    if (open.farm().book().stations().values().stream().anyMatch(s -> s.cameras() == 2)) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + book,
                  "has a station with two cameras, whose photos are measured in pairs",
                  "run its photos without --engine spark, and others with a book of their own")));
    }
    SparkSession spark = master.start();
    try {
      OptionalInt parts = partitions == null ? OptionalInt.empty() : OptionalInt.of(partitions);
      ClusterRun.Request request =
          new ClusterRun.Request(
              photos,
              Optional.ofNullable(listing),
              book,
              out,
              new FirstPass.Rule(parts, partitionMb * MB, round),
              evenings,
              OffsetDateTime.now(open.farm().zone()));
      ClusterRun.Summary summary = new ClusterRun(spark, request, System.err).run();
      System.out.println(
          "Photos   "
              + (summary.measured() + summary.known())
              + ": "
              + summary.measured()
              + " measured now, "
              + summary.known()
              + " before; "
              + summary.photos());
      System.out.println("Evenings " + summary.evenings());
      System.out.println("Dataset  " + out);
      return 0;
    } finally {
      spark.stop();
    }
  }
}
