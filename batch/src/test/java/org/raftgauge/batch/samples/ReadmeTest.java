// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Runs what the README and the developers' page tell a reader to run, and follows their links. */
class ReadmeTest {
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)(#[^)]*)?\\)");
  private static final long LARGEST_PICTURE = 200 * 1024;

  @Test
  void everyCommandButTheSampleRunEndsWell() throws IOException {
    int ran = 0;
    for (String command : Readme.commands()) {
      if (command.startsWith(Readme.LAUNCHER) && !command.equals(Readme.sampleRun())) {
        Readme.Said said = Readme.run(Readme.arguments(command));
        assertEquals(0, said.code(), command + " said " + said.out() + said.err());
        assertTrue(!said.out().isBlank(), command + " said nothing");
        ran++;
      }
    }
    assertTrue(ran >= 2, "help and check are among the commands");
  }

  @Test
  void theTestCommandIsWhatTheBuildServerRuns() throws IOException {
    List<String> tests = Readme.commands().stream().filter(c -> c.startsWith("mvn ")).toList();
    assertEquals(List.of("mvn -B verify"), tests);
    List<String> server = Files.readAllLines(Readme.ROOT.resolve(".ci/run"));
    assertTrue(server.contains(tests.get(0)), ".ci/run calls something else");
  }

  @Test
  void theFirstTwoCommandsAreTheSampleRunAndTheTests() throws IOException {
    assertEquals(List.of(Readme.sampleRun(), "mvn -B verify"), Readme.commands().subList(0, 2));
  }

  @Test
  void everyLinkLeadsToAFile() throws IOException {
    for (String page : List.of("README.md", "DEVELOPERS.md")) {
      Matcher links = LINK.matcher(Files.readString(Readme.ROOT.resolve(page)));
      int followed = 0;
      while (links.find()) {
        if (!links.group(1).startsWith("http")) {
          Path file = Readme.ROOT.resolve(links.group(1));
          assertTrue(Files.exists(file), page + " links to " + links.group(1));
          followed++;
        }
      }
      assertTrue(followed > 2, page + " has links");
    }
  }

  @Test
  void theGuidesAreLinked() throws IOException {
    for (String guide :
        List.of(
            "batch/CROP-BOOK.md",
            "batch/TEACHING.md",
            "batch/proving/README.md",
            "DEVELOPERS.md")) {
      assertTrue(Readme.text().contains("](" + guide + ")"), guide + " is not linked");
    }
  }

  @Test
  void thePicturesAreSmall() throws IOException {
    try (var files = Files.list(Readme.ROOT.resolve("sample-images/pictures"))) {
      for (Path picture : files.toList()) {
        assertTrue(Files.size(picture) <= LARGEST_PICTURE, picture + " is over 200 KB");
      }
    }
  }
}
