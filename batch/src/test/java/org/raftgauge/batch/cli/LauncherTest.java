// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Runs the launcher in a house of its own, with a {@code java} and a {@code mvn} that only say. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the launcher there is raftgauge.cmd")
class LauncherTest {
  private static final String JAVA_17 =
      "[ \"$1\" = -version ] && { echo 'openjdk version \"17.0.15\" 2025-04-15' >&2; exit 0; }\n"
          + "echo \"java $*\"";
  private static final String MVN =
      "echo \"$*\" >> \"$HERE/mvn.log\"\nmkdir -p batch/target/lib\ntouch batch/target/raftgauge.jar";

  @TempDir private Path folder;

  private Path bin;
  private Path launcher;

  @BeforeEach
  void buildHouse() throws IOException {
    bin = Files.createDirectories(folder.resolve("bin"));
    for (String tool :
        List.of("dirname", "readlink", "find", "head", "sed", "mkdir", "touch", "cat")) {
      Path real =
          List.of("/bin", "/usr/bin").stream()
              .map(dir -> Path.of(dir, tool))
              .filter(Files::exists)
              .findFirst()
              .orElseThrow();
      tool(tool, "exec " + real + " \"$@\"");
    }
    for (String dir : List.of("core/src/main", "batch/src/main")) {
      Files.createDirectories(folder.resolve("my house").resolve(dir));
    }
    for (String file :
        List.of("pom.xml", "core/pom.xml", "batch/pom.xml", "core/src/main/A.java")) {
      Path path = folder.resolve("my house").resolve(file);
      Files.writeString(path, "");
      Files.setLastModifiedTime(path, FileTime.from(Instant.parse("2026-01-01T00:00:00Z")));
    }
    launcher = folder.resolve("my house/batch/raftgauge");
    Files.copy(Path.of("raftgauge").toAbsolutePath(), launcher);
  }

  @Test
  void itBuildsOnceSaysSoAndRuns() throws Exception {
    tool("java", JAVA_17);
    tool("mvn", MVN);

    Said first = launch(launcher, "run", "my photos");
    Said second = launch(launcher, "check");

    assertEquals("raftgauge: building once; this takes a minute or two ...\n", first.err());
    assertTrue(first.out().endsWith("batch/target/raftgauge.jar run my photos\n"), first.out());
    assertEquals("", second.err());
    assertEquals(
        "-q -B -Dmaven.test.skip=true -Dwarnings=-Xlint:none -Dspotless.check.skip=true"
            + " -pl core,batch -am package\n",
        Files.readString(folder.resolve("mvn.log")));
  }

  @Test
  void itBuildsAgainWhenASourceIsNewer() throws Exception {
    tool("java", JAVA_17);
    tool("mvn", MVN);
    launch(launcher);
    Files.setLastModifiedTime(
        folder.resolve("my house/core/src/main/A.java"),
        FileTime.from(Instant.now().plusSeconds(60)));

    launch(launcher);

    assertEquals(2, Files.readAllLines(folder.resolve("mvn.log")).size());
  }

  @Test
  void itFindsItsHouseThroughLinks() throws Exception {
    tool("java", JAVA_17);
    tool("mvn", MVN);
    Path link = folder.resolve("link");
    Files.createSymbolicLink(link, Path.of("my house", "batch", "raftgauge"));
    Path linkToLink = folder.resolve("bin/raftgauge");
    Files.createSymbolicLink(linkToLink, link);

    Said said = launch(linkToLink, "--help");

    assertEquals(0, said.code(), said.err());
    assertTrue(said.out().contains("my house/batch/target/raftgauge.jar --help"), said.out());
  }

  @Test
  void codeIsOptimisedOnlyWhereAFolderHasManyPhotos() throws Exception {
    tool("java", JAVA_17);
    tool("mvn", MVN);
    Path photos = Files.createDirectories(folder.resolve("my photos/tonight"));
    for (int i = 0; i < 16; i++) {
      Files.createFile(photos.resolve("raft " + i + (i % 2 == 0 ? ".JPG" : ".png")));
    }
    Files.createFile(photos.resolve("manifest.csv"));
    String in = photos.getParent().toString();
    assertTrue(light("run", in, "--book", folder.toString()));
    assertTrue(light("check", in));
    assertFalse(light("run", in, "--watch"), "more will come");
    assertFalse(light("run", "--book", in), "the folder of photos is not named");
    assertFalse(light("judge"));
    Path linked = Files.createDirectories(folder.resolve("elsewhere"));
    Files.createSymbolicLink(photos.resolve("older"), linked);
    assertTrue(light("run", in));
    Files.createFile(linked.resolve("one more.tif"));
    assertFalse(light("run", in), "links are followed");
  }

  private boolean light(String... args) throws Exception {
    Said said = launch(launcher, args);
    assertEquals(0, said.code(), said.err());
    return said.out().contains("-XX:TieredStopAtLevel=1");
  }

  @Test
  void javaTakesTheLaunchersOptions() throws Exception {
    Process java =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "@" + Path.of("java.options").toAbsolutePath(),
                "-version")
            .redirectErrorStream(true)
            .start();
    String said = new String(java.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

    assertEquals(0, java.waitFor(), said);
  }

  @Test
  void aFailedBuildShowsItsMessages() throws Exception {
    tool("java", JAVA_17);
    tool("mvn", "echo '[ERROR] no such thing'\nexit 1");

    Said said = launch(launcher);

    assertEquals(3, said.code());
    assertTrue(
        said.err().contains("[ERROR] no such thing\nraftgauge: the build failed;"), said.err());
    assertEquals("", said.out());
  }

  @Test
  void itSaysWhatIsMissing() throws Exception {
    Said noJava = launch(launcher);
    tool("java", "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");
    Said oldJava = launch(launcher);
    tool("java", JAVA_17);
    Said noMaven = launch(launcher);

    assertEquals(
        "raftgauge: Java is missing; install a JDK, version 17 or newer, and try again.\n",
        noJava.err());
    assertEquals(
        "raftgauge: Java 17 or newer is needed, this one is 11; install a newer JDK or set"
            + " JAVA_HOME.\n",
        oldJava.err());
    assertEquals(
        "raftgauge: it has to be built once and Maven (mvn) is missing; install Maven 3.6.3 or"
            + " newer and try again.\n",
        noMaven.err());
    assertEquals(List.of(3, 3, 3), List.of(noJava.code(), oldJava.code(), noMaven.code()));
  }

  private void tool(String name, String script) throws IOException {
    Path file = bin.resolve(name);
    Files.writeString(file, "#!/bin/sh\n" + script + "\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private Said launch(Path command, String... args) throws Exception {
    List<String> line = new ArrayList<>(List.of("/bin/sh", command.toString()));
    line.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(line).directory(new File("/"));
    builder.environment().clear();
    builder.environment().put("PATH", bin.toString());
    builder.environment().put("HERE", folder.toString());
    builder.redirectError(folder.resolve("err").toFile());
    Process process = builder.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int code = process.waitFor();
    return new Said(code, out, Files.readString(folder.resolve("err")));
  }

  private record Said(int code, String out, String err) {}
}
