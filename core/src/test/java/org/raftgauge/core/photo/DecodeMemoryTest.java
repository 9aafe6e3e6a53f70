// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

class DecodeMemoryTest {
  /**
   * In a process of its own whose whole heap is touched before the first picture, so that what
   * grows is outside the heap on a machine of any size.
   */
  @Test
  void decodingManyTimesDoesNotGrowTheProcess() throws IOException, InterruptedException {
    Assumptions.assumeTrue(Files.exists(DecodingManyTimes.STATUS), "no /proc here");
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.awt.headless=true",
            "-XX:+UseSerialGC",
            "-XX:+AlwaysPreTouch",
            "-Xms256m",
            "-Xmx256m",
            "-cp",
            System.getProperty("java.class.path"),
            DecodingManyTimes.class.getName());
    Process child = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    assertEquals(0, child.waitFor(), said);
    // 200 leaked pictures would be 900 MB; compiled code and the allocator's arenas are far less.
    int grownMb = Integer.parseInt(said.lines().reduce((first, second) -> second).orElseThrow());
    assertTrue(grownMb < 150, "grew by " + grownMb + " MB");
  }
}
