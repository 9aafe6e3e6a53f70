// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.dataset;

import java.io.IOException;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;

/**
 * Counts what a store holds after it was written, before it is published: a store that lists late,
 * or drops what is renamed, leaves a table short without any error.
 */
public final class CountRows {
  private CountRows() {}

  /**
   * Compares the rows of a folder with those that were written.
   *
   * @param spark the session
   * @param columns of the folder's files
   * @param folder Parquet files, in partitions or not
   * @param due rows that were written
   * @throws IOException if the folder holds another number of rows
   */
  public static void check(SparkSession spark, StructType columns, String folder, long due)
      throws IOException {
    long there = spark.read().schema(columns).parquet(folder).count();
    if (there != due) {
      throw new IOException(
          folder
              + " holds "
              + there
              + " of the "
              + due
              + " rows written: the store lost or hides files; see that it keeps what is renamed"
              + " and lists it at once, and run again");
    }
  }
}
