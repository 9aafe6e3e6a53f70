// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.InputException;

class SparkEngineTest {
  @TempDir Path folder;

  @Test
  void onlyARunThatAsksForSparkIsHandedOn() {
    assertEquals(
        Optional.of(List.of("run", "photos", "--book", "b")),
        SparkEngine.asked(new String[] {"run", "photos", "--engine", "spark", "--book", "b"}));
    assertEquals(
        Optional.of(List.of("run", "photos")),
        SparkEngine.asked(new String[] {"run", "--engine=spark", "photos"}));
    assertEquals(
        Optional.of(List.of("export", "d")),
        SparkEngine.asked(new String[] {"cluster", "export", "d"}));
    assertEquals(Optional.empty(), SparkEngine.asked(new String[] {"run", "photos"}));
    assertEquals(
        Optional.empty(), SparkEngine.asked(new String[] {"run", "photos", "--engine", "local"}));
    assertEquals(Optional.empty(), SparkEngine.asked(new String[0]));
    // The help on cluster needs no Spark; that on its commands is theirs.
    assertEquals(Optional.empty(), SparkEngine.asked(new String[] {"cluster", "--help"}));
    assertEquals(
        Optional.of(List.of("export", "--help")),
        SparkEngine.asked(new String[] {"cluster", "export", "--help"}));
  }

  @Test
  void aMissingModuleIsSaidWithHowToBuildIt() throws IOException {
    Path batch = Files.createDirectories(folder.resolve("batch/target"));
    assertEquals(
        "--engine spark: the cluster module is not built ("
            + folder.resolve("batch/cluster/target/raftgauge-cluster.jar")
            + "); build it once, in the folder with pom.xml: mvn -B -DskipTests package",
        message(new SparkEngine(batch, Map.of())));
  }

  @Test
  void aSparkHomeWithoutSparkIsSaid() throws IOException {
    SparkEngine engine = new SparkEngine(built(), Map.of("SPARK_HOME", folder.toString()));
    assertEquals(
        "--engine spark: SPARK_HOME is "
            + folder
            + ", which has no folder jars; set it to a Spark 4 with Scala 2.13, or unset it to use"
            + " the one of the build",
        message(engine));
  }

  @Test
  void executorsElsewhereAreSentTheJarsButNoSecondLogging() throws Exception {
    Path batch = built();
    Files.createDirectories(folder.resolve("batch/cluster/target/spark/jars"));
    SparkEngine engine = new SparkEngine(batch, Map.of());
    List<String> there = engine.command(List.of("run", "p", "--master", "spark://head:7077"));
    String jars = there.stream().filter(a -> a.startsWith("-Dspark.jars=")).findFirst().get();
    assertTrue(jars.contains("opencv.jar") && jars.contains("raftgauge-cluster.jar"), jars);
    assertFalse(jars.contains("slf4j-nop.jar"), jars);
    List<String> here = engine.command(List.of("run", "p", "--master=local[2]"));
    assertTrue(here.stream().noneMatch(a -> a.startsWith("-Dspark.jars=")), here.toString());
    assertEquals(
        List.of("run", "p", "--master=local[2]"), here.subList(here.size() - 3, here.size()));
  }

  private Path built() throws IOException {
    Path batch = Files.createDirectories(folder.resolve("batch/target"));
    Files.createDirectories(batch.resolve("lib"));
    for (String jar : List.of("lib/opencv.jar", "lib/slf4j-nop.jar", "raftgauge.jar")) {
      Files.createFile(batch.resolve(jar));
    }
    Path module = Files.createDirectories(folder.resolve("batch/cluster/target"));
    Files.createFile(module.resolve("raftgauge-cluster.jar"));
    return batch;
  }

  private static String message(SparkEngine engine) {
    return assertThrows(InputException.class, () -> engine.command(List.of("run")))
        .problems()
        .get(0)
        .toString();
  }
}
