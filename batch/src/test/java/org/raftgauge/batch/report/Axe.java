// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** Checks contrast, labels and the like of an open page by axe-core, fetched by npm. */
final class Axe {
  /** Kept below the module's target, so that it is fetched once. */
  private static final Path NPM = Path.of("target/npm");

  private static final Path FILE = NPM.resolve("node_modules/axe-core/axe.min.js");

  /** Version 4.10.3 of axe-core (MPL-2.0); used by tests only, not shipped. */
  private static final String PACKAGE = "axe-core@4.10.3";

  private Axe() {}

  /** Fetches it where it is not there yet; false where that does not work. */
  static boolean isThere() throws IOException, InterruptedException {
    if (Files.isRegularFile(FILE)) {
      return true;
    }
    Files.createDirectories(NPM);
    try {
      Process npm =
          new ProcessBuilder(
                  "npm",
                  "install",
                  "--prefix",
                  NPM.toString(),
                  "--no-save",
                  "--ignore-scripts",
                  "--no-audit",
                  "--no-fund",
                  PACKAGE)
              .redirectErrorStream(true)
              .redirectOutput(NPM.resolve("npm.log").toFile())
              .start();
      if (!npm.waitFor(90, TimeUnit.SECONDS)) {
        npm.destroyForcibly();
      }
    } catch (IOException e) {
      return false;
    }
    return Files.isRegularFile(FILE);
  }

  /** Returns what is wrong with the page as it is open; empty where nothing is. */
  static String run(Chromium browser) throws Exception {
    browser.call("Runtime.evaluate", "\"expression\":" + json(Files.readString(FILE)));
    return browser.evaluate(
        "axe.run().then(r => r.violations.map(v => v.id + ' at '"
            + " + v.nodes.slice(0, 3).map(n => n.target).join(' ') + ' '"
            + " + v.nodes[0].failureSummary).join('; '))");
  }

  private static String json(String text) {
    StringBuilder json = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        json.append('\\').append(c);
      } else if (c < ' ' || c > '~') {
        json.append(String.format("\\u%04x", (int) c));
      } else {
        json.append(c);
      }
    }
    return json.append('"').toString();
  }
}
