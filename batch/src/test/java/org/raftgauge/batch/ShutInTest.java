// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The program asks no network, starts no other program and builds no object from what it reads:
 * looked for in the sources of core and batch.
 */
class ShutInTest {
  private static final List<Path> SOURCES =
      List.of(Path.of("src", "main", "java"), Path.of("..", "core", "src", "main", "java"));

  /** Sockets, look-ups, web clients; {@code URISyntaxException} names no network. */
  private static final Pattern NETWORK =
      Pattern.compile(
          "java\\.net\\.(?!URISyntaxException|URI;)|javax\\.net|java\\.rmi|SocketChannel"
              + "|\\.openStream\\(|\\.openConnection\\(|HttpClient|InetAddress");

  /** They read the program's own jar by its address. */
  private static final Set<String> OWN_JAR = Set.of("NativeCache.java", "NativeLibrary.java");

  /** Serves a watch's report to this machine alone, where {@code --desk} asks for it. */
  private static final String DESK = "Desk.java";

  /** Starts the program for clusters, where {@code --engine spark} asks for it. */
  private static final String SPARK = "SparkEngine.java";

  private static final Path DESK_SOURCE =
      Path.of("src", "main", "java", "org", "raftgauge", "batch", "desk", DESK);

  private static final Pattern OTHER_PROGRAMS =
      Pattern.compile("ProcessBuilder|getRuntime\\(\\)\\.exec|java\\.awt\\.Desktop");

  private static final Pattern OBJECTS =
      Pattern.compile(
          "ObjectInputStream|ScriptEngine|XMLDecoder|\\.loadAs\\(|new Constructor\\(|Class\\.forName"
              + "|enableDefaultTyping|activateDefaultTyping");

  @Test
  void nothingAsksTheNetwork() throws IOException {
    assertEquals(List.of(), lines(NETWORK, file -> OWN_JAR.contains(file) || file.equals(DESK)));
    String desk = Files.readString(DESK_SOURCE);
    int addresses = desk.split("new InetSocketAddress\\(", -1).length - 1;
    assertEquals(1, addresses);
    assertTrue(desk.contains("new InetSocketAddress(InetAddress.getLoopbackAddress(), port)"));
  }

  @Test
  void nothingStartsAnotherProgram() throws IOException {
    assertEquals(List.of(), lines(OTHER_PROGRAMS, SPARK::equals));
  }

  @Test
  void nothingThatIsReadBecomesAnObjectOfAnyClass() throws IOException {
    assertEquals(List.of(), lines(OBJECTS, file -> false));
  }

  @Test
  void breachesWouldBeSeen() {
    assertTrue(NETWORK.matcher("import java.net.Socket;").find());
    assertTrue(NETWORK.matcher("import java.net.http.HttpClient;").find());
    assertTrue(NETWORK.matcher("in = url.openStream();").find());
    assertTrue(OTHER_PROGRAMS.matcher("new ProcessBuilder(\"x\")").find());
    assertTrue(OBJECTS.matcher("yaml.loadAs(text, Crop.class)").find());
  }

  /**
   * The pages' templates escape by their kind, and nothing in them switches that off but for plots:
   * their text is written by an XML writer, which escapes by itself.
   */
  @Test
  void noTemplateSwitchesEscapingOff() throws IOException {
    List<String> bad = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of("src", "main", "resources"))) {
      for (Path file : files.filter(f -> f.toString().matches(".*\\.ftlh?")).toList()) {
        assertTrue(file.toString().endsWith(".ftlh"), file + " is of a kind that does not escape");
        for (String line : Files.readAllLines(file)) {
          if (!line.contains("${plot?no_esc}")
              && line.matches(
                  ".*(noautoesc|no_esc|outputformat|output_format|\\?interpret|\\?eval).*")) {
            bad.add(file.getFileName() + ": " + line.strip());
          }
        }
      }
    }
    assertEquals(List.of(), bad);
  }

  private static List<String> lines(Pattern pattern, Predicate<String> exempt) throws IOException {
    List<String> found = new ArrayList<>();
    int read = 0;
    for (Path root : SOURCES) {
      try (Stream<Path> walk = Files.walk(root)) {
        for (Path file : walk.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
          read++;
          for (String line : Files.readAllLines(file)) {
            if (pattern.matcher(line).find() && !exempt.test(file.getFileName().toString())) {
              found.add(root.relativize(file) + ": " + line.strip());
            }
          }
        }
      }
    }
    assertTrue(read > 400, "the sources were found: " + read);
    return found;
  }
}
