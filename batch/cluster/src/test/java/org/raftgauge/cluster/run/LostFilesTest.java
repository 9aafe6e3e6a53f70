// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.cluster.dataset.CountRows;

/** A store that drops files of a table, as one does that lists what was just renamed too late. */
class LostFilesTest {
  @TempDir Path work;

  @Test
  void tableThatLostAPartitionIsFoundByItsRows() throws IOException {
    String folder = work.resolve("sites").toString();
    try (SparkSession spark = Session.start(Optional.of("local[1]"))) {
      // Days 0, 1 and 2 of 10 rows: 4, 3 and 3 of them.
      Dataset<Row> rows = spark.range(10).selectExpr("id", "id % 3 AS day");
      rows.write().partitionBy("day").parquet(folder);
      CountRows.check(spark, rows.schema(), folder, 10);
      try (Stream<Path> files = Files.list(work.resolve("sites/day=0"))) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
      }
      IOException lost =
          assertThrows(IOException.class, () -> CountRows.check(spark, rows.schema(), folder, 10));
      assertEquals(
          folder
              + " holds 6 of the 10 rows written: the store lost or hides files; see that it keeps"
              + " what is renamed and lists it at once, and run again",
          lost.getMessage());
      String empty = Files.createDirectories(work.resolve("empty")).toString();
      Files.createFile(work.resolve("empty/_SUCCESS"));
      CountRows.check(spark, rows.schema(), empty, 0);
    }
  }
}
