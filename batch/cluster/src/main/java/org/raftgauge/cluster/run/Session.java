// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import java.util.Optional;
import org.apache.spark.SparkConf;
import org.apache.spark.sql.SparkSession;

/** Starts Spark with what Raftgauge needs, as far as the person or the cluster does not say it. */
public final class Session {
  private static final String SHUFFLES = "spark.sql.shuffle.partitions";

  private Session() {}

  /**
   * Starts.
   *
   * @param master URL of the cluster; empty where {@code spark-submit} gives it
   * @return the session, to be stopped
   */
  public static SparkSession start(Optional<String> master) {
    SparkConf settings = new SparkConf().setIfMissing("spark.app.name", "raftgauge");
    master.ifPresent(settings::setMaster);
    settings.setIfMissing("spark.master", "local[*]");
    boolean local = settings.get("spark.master").startsWith("local");
    settings.setIfMissing("spark.ui.enabled", local ? "false" : "true");
    // Cycles and days are names: none of them is to be read as a number or date.
    settings.setIfMissing("spark.sql.sources.partitionColumnTypeInference.enabled", "false");
    // Rows are few beside the work of a photo: compiling code for each plan would cost more than it
    // saves, and so would planning anew after each shuffle.
    settings.setIfMissing("spark.sql.codegen.wholeStage", "false");
    settings.setIfMissing("spark.sql.codegen.factoryMode", "NO_CODEGEN");
    settings.setIfMissing("spark.sql.adaptive.enabled", "false");
    settings.setIfMissing("spark.sql.debug.maxToStringFields", "1000");
    boolean asked = settings.contains(SHUFFLES);
    SparkSession spark = SparkSession.builder().config(settings).getOrCreate();
    if (!asked) {
      int slots = Math.max(1, spark.sparkContext().defaultParallelism());
      spark.conf().set(SHUFFLES, 2L * slots);
    }
    return spark;
  }
}
