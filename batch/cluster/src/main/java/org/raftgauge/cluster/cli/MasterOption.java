// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.cli;

import java.util.Optional;
import org.apache.spark.sql.SparkSession;
import org.raftgauge.cluster.run.Session;
import picocli.CommandLine.Option;

/** Where Spark runs. */
final class MasterOption {
  @Option(
      names = "--master",
      paramLabel = "URL",
      description = {
        "The cluster: spark://HOST:7077, yarn, k8s://..., or local[N] for N threads here."
            + " Default: what spark-submit says, else local[*]."
      })
  private String master;

  SparkSession start() {
    return Session.start(Optional.ofNullable(master));
  }
}
