// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page of 500 rafts of 24 sites: what makes it slow or heavy is bounded, since times depend on
 * the machine. Measured on two busy cores: 3.3 MB, 76 000 elements, 10 MB of heap, loaded after 1.7
 * s.
 */
class LargeFarmTest {

  @Test
  void aPageOf500RaftsStaysLight(@TempDir Path run, @TempDir Path profile) throws Exception {
    Optional<Path> program = Chromium.program();
    assumeTrue(program.isPresent(), "no Chromium on the PATH: the page is not tried in a browser");
    PretendRun farm = PretendRun.of(run.resolve("book"), 500, 2);
    farm.write(run);
    Path page = run.resolve("report.html");
    assertTrue(Files.size(page) < 12_000_000, Files.size(page) + " bytes");
    try (Chromium browser = Chromium.start(program.get(), profile)) {
      browser.open(page.toUri().toString());
      assertEquals("500", browser.evaluate("document.querySelectorAll('details.raft').length"));
      double elements =
          Double.parseDouble(browser.evaluate("document.getElementsByTagName('*').length"));
      assertTrue(elements < 150_000, elements + " elements");
      double heap = Double.parseDouble(browser.evaluate("performance.memory.usedJSHeapSize / 1e6"));
      assertTrue(heap < 300, heap + " MB of heap");
      assertEquals(List.of(), browser.complaints());
    }
  }
}
