// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Says which commit is measured. */
final class Commit {

  private Commit() {}

  /** Asks git; "with changes" where the sources differ from the commit. */
  static String of(Path root) throws IOException {
    String hash = git(root, "rev-parse", "--short=10", "HEAD");
    String changes = git(root, "status", "--porcelain", "--", "core/src/main", "batch/src/main");
    return hash.isEmpty() ? "unknown" : changes.isEmpty() ? hash : hash + " with changes";
  }

  private static String git(Path root, String... arguments) throws IOException {
    List<String> call = new ArrayList<>(List.of("git"));
    call.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(call)
            .directory(root.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
  }
}
