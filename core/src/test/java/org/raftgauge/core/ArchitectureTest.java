// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Keeps the packages of core in one order, outside libraries in their packages, names honest. */
class ArchitectureTest {
  /** A package may import only packages before it. */
  private static final List<String> ORDER =
      List.of(
          "problem",
          "pixels",
          "agreement",
          "table",
          "opencv",
          "book",
          "photo",
          "marker",
          "plane",
          "relief",
          "calibrate",
          "canopy",
          "site",
          "measure",
          "teach",
          "history",
          "statistics",
          "station",
          "leastsquares",
          "growth",
          "cohort",
          "reference",
          "grader",
          "track",
          "evening",
          "forecast",
          "report");

  /** Who may import what of others. */
  private static final Map<String, Set<String>> OUTSIDE =
      Map.of(
          "org.opencv", Set.of("opencv"),
          "nu.pattern", Set.of("opencv"),
          "boofcv", Set.of("marker", "plane", "calibrate"),
          "georegression", Set.of("marker", "plane", "calibrate"),
          "org.ddogleg", Set.of("marker", "plane", "calibrate"),
          "org.apache.commons.csv", Set.of("table"),
          "org.yaml", Set.of("book"));

  private static final Pattern BAD_NAME =
      Pattern.compile("(.*(Utils?|Helpers?|Manager|Processor|Impl)|(Abstract|Base)[A-Z].*)");
  private static final Pattern BAD_CALL =
      Pattern.compile(
          "System\\.(out|err|currentTimeMillis)|\\b[A-Z]\\w*\\.now\\(|new Random\\(\\)");
  private static final Pattern IMPORT = Pattern.compile("import (static )?([\\w.*]+);");
  private static final String OURS = "org.raftgauge.core.";
  private static final Path SOURCES = Path.of("src/main/java/org/raftgauge/core");

  @Test
  void packagesImportOnlyPackagesBeforeThem() throws IOException {
    assertEquals(List.of(), breaches((in, line) -> wrongOrder(in, line)));
  }

  @Test
  void outsideLibrariesStayInTheirPackages() throws IOException {
    assertEquals(List.of(), breaches((in, line) -> wrongOutside(in, line)));
  }

  @Test
  void coreKnowsNoCommandLineNoPageAndNoDatabase() throws IOException {
    Set<String> known = new java.util.HashSet<>(OUTSIDE.keySet());
    known.addAll(
        Set.of("java", "javax", "org.raftgauge.core", "org.hipparchus", "org.ejml", "com.drew"));
    assertEquals(
        List.of(),
        breaches(
            (in, line) -> {
              var found = IMPORT.matcher(line);
              return found.matches()
                  && known.stream().noneMatch(k -> found.group(2).startsWith(k + "."));
            }));
    String pom = Files.readString(Path.of("pom.xml"));
    for (String other : List.of("picocli", "freemarker", "pdfbox", "xchart", "sqlite", "batch")) {
      assertTrue(!pom.contains(other), "core's pom names " + other);
    }
  }

  @Test
  void coreHasNoClockNoPrintingAndNoUnseededRandom() throws IOException {
    assertEquals(List.of(), breaches((in, line) -> BAD_CALL.matcher(line).find()));
  }

  @Test
  void noClassIsADumpingGround() throws IOException {
    List<String> bad =
        files().stream()
            .map(file -> file.getFileName().toString().replace(".java", ""))
            .filter(name -> BAD_NAME.matcher(name).matches())
            .toList();
    assertEquals(List.of(), bad);
  }

  @Test
  void everyPackageHasItsPlaceInTheOrder() throws IOException {
    assertTrue(files().size() > 20, "the sources were found");
    assertEquals(
        List.of(),
        files().stream().map(ArchitectureTest::packageOf).filter(p -> !ORDER.contains(p)).toList());
  }

  @Test
  void breachesWouldBeSeen() {
    assertTrue(wrongOrder("table", "import org.raftgauge.core.book.Crop;"));
    assertTrue(wrongOrder("book", "import static org.raftgauge.core.site.X.y;"));
    assertTrue(!wrongOrder("book", "import org.raftgauge.core.table.Cell;"));
    assertTrue(wrongOutside("book", "import org.opencv.core.Mat;"));
    assertTrue(!wrongOutside("opencv", "import org.opencv.core.Mat;"));
    assertTrue(BAD_NAME.matcher("StringUtils").matches());
    assertTrue(BAD_NAME.matcher("BaseRaft").matches());
    assertTrue(!BAD_NAME.matcher("Baseline").matches());
    assertTrue(BAD_CALL.matcher("Instant.now()").find());
    assertTrue(BAD_CALL.matcher("LocalDate.now(zone)").find());
    assertTrue(!BAD_CALL.matcher("clock.now()").find(), "a time that was handed in is no clock");
  }

  private interface Rule {
    boolean isBrokenBy(String inPackage, String line);
  }

  private static List<String> breaches(Rule rule) throws IOException {
    List<String> found = new java.util.ArrayList<>();
    for (Path file : files()) {
      for (String line : Files.readAllLines(file)) {
        if (rule.isBrokenBy(packageOf(file), line)) {
          found.add(SOURCES.relativize(file) + ": " + line.strip());
        }
      }
    }
    return found;
  }

  private static boolean wrongOrder(String in, String line) {
    Optional<String> other =
        imported(line)
            .filter(name -> name.startsWith(OURS))
            .map(name -> name.substring(OURS.length()).replaceFirst("\\..*", ""));
    return other.isPresent()
        && !other.get().equals(in)
        && ORDER.indexOf(other.get()) >= ORDER.indexOf(in);
  }

  private static boolean wrongOutside(String in, String line) {
    Optional<String> name = imported(line);
    return name.isPresent()
        && OUTSIDE.entrySet().stream()
            .anyMatch(o -> name.get().startsWith(o.getKey() + ".") && !o.getValue().contains(in));
  }

  private static Optional<String> imported(String line) {
    Matcher matcher = IMPORT.matcher(line.strip());
    return matcher.matches() ? Optional.of(matcher.group(2)) : Optional.empty();
  }

  private static String packageOf(Path file) {
    return SOURCES.relativize(file).getName(0).toString();
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.walk(SOURCES)) {
      return files
          .filter(file -> file.toString().endsWith(".java"))
          .filter(file -> !file.equals(SOURCES.resolve("package-info.java")))
          .sorted()
          .toList();
    }
  }
}
