// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * Hands a command to the program of the cluster module, in a process of its own with Spark's
 * libraries: those of {@code SPARK_HOME}, else those that the build put beside the module.
 */
final class SparkEngine {
  private static final String MAIN = "org.raftgauge.cluster.cli.Cluster";
  private static final String BUILD =
      "build it once, in the folder with pom.xml: mvn -B -DskipTests package";

  private final Path batch;
  private final Map<String, String> environment;

  /**
   * Prepares.
   *
   * @param batch folder of {@code raftgauge.jar}
   * @param environment of the process
   */
  SparkEngine(Path batch, Map<String, String> environment) {
    this.batch = batch;
    this.environment = environment;
  }

  /** Returns the engine beside the running program. */
  static SparkEngine here() {
    try {
      Path code =
          Path.of(Raftgauge.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      return new SparkEngine(code.toAbsolutePath().getParent(), System.getenv());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Returns what the cluster module's program is to be called with.
   *
   * @param args the command line
   * @return its command line; nothing where another engine, or the help on these, is asked for
   */
  static Optional<List<String>> asked(String[] args) {
    List<String> left = new ArrayList<>(List.of(args));
    if (left.isEmpty()) {
      return Optional.empty();
    }
    if (left.get(0).equals("cluster")) {
      List<String> rest = left.subList(1, left.size());
      return rest.equals(List.of("--help")) || rest.equals(List.of("-h"))
          ? Optional.empty()
          : Optional.of(rest);
    }
    int at = left.indexOf("--engine");
    boolean apart = at > 0 && at + 1 < left.size() && left.get(at + 1).equals("spark");
    if (!left.get(0).equals("run") || !(apart || left.remove("--engine=spark"))) {
      return Optional.empty();
    }
    if (apart) {
      left.subList(at, at + 2).clear();
    }
    return Optional.of(left);
  }

  /**
   * Runs a command.
   *
   * @param args of the cluster module's program
   * @return its exit code
   * @throws InputException if module or Spark are missing
   * @throws IOException if the process cannot be started
   */
  int run(List<String> args) throws InputException, IOException {
    ProcessBuilder process = new ProcessBuilder(command(args)).inheritIO();
    process.environment().put("SPARK_HOME", sparkHome().toString());
    process.environment().putIfAbsent("SPARK_SCALA_VERSION", "2.13");
    try {
      return process.start().waitFor();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped", e);
    }
  }

  /** Returns the command line of the process. */
  List<String> command(List<String> args) throws InputException, IOException {
    Path module = module().resolve("raftgauge-cluster.jar");
    if (!Files.exists(module)) {
      throw missing("the cluster module is not built (" + module + ")", BUILD);
    }
    Path spark = sparkHome();
    List<String> classPath = new ArrayList<>();
    classPath.add(module.toString());
    Path settings = spark.resolve("conf");
    if (Files.isDirectory(settings)) {
      classPath.add(settings.toString());
    }
    classPath.add(spark.resolve("jars") + File.separator + "*");
    List<String> own = own();
    classPath.addAll(own);
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Djava.awt.headless=true");
    command.add("-XX:MaxRAMPercentage=60");
    command.add("-Dslf4j.provider=org.apache.logging.slf4j.SLF4JServiceProvider");
    if (!local(args)) {
      command.add("-Dspark.jars=" + module + "," + String.join(",", own));
    }
    command.add("-cp");
    command.add(String.join(File.pathSeparator, classPath));
    command.add(MAIN);
    command.addAll(args);
    return command;
  }

  /** Returns whether threads of the process itself do the work: they have its class path. */
  private static boolean local(List<String> args) {
    return args.stream()
        .map(arg -> arg.replaceFirst("^--master=", ""))
        .anyMatch(arg -> arg.equals("local") || arg.startsWith("local["));
  }

  /** Returns the jars of this program that executors need; Spark brings its own logging. */
  private List<String> own() throws IOException {
    try (Stream<Path> jars = Files.list(batch.resolve("lib"))) {
      return Stream.concat(Stream.of(batch.resolve("raftgauge.jar")), jars.sorted())
          .map(Path::toString)
          .filter(jar -> jar.endsWith(".jar") && !jar.contains("slf4j-"))
          .collect(Collectors.toList());
    }
  }

  private Path module() {
    return batch.resolve(Path.of("..", "cluster", "target")).normalize();
  }

  private Path sparkHome() throws InputException {
    Optional<Path> given = Optional.ofNullable(environment.get("SPARK_HOME")).map(Path::of);
    Path home = given.orElse(module().resolve("spark"));
    if (!Files.isDirectory(home.resolve("jars"))) {
      throw given.isPresent()
          ? missing(
              "SPARK_HOME is " + home + ", which has no folder jars",
              "set it to a Spark 4 with Scala 2.13, or unset it to use the one of the build")
          : missing(
              "no Spark was found: SPARK_HOME is not set, and the build left none in " + home,
              "set SPARK_HOME to a Spark 4 with Scala 2.13, or " + BUILD);
    }
    return home;
  }

  private static InputException missing(String found, String remedy) {
    return new InputException(List.of(new Problem("--engine spark", found, remedy)));
  }
}
