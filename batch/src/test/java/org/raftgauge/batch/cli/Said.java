// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * What a command said.
 *
 * @param code its exit code
 * @param out all that it told the output
 * @param err all that it told the error stream
 */
record Said(int code, String out, String err) {

  /** Runs a command of the real program in this process. */
  static Said by(List<String> call) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    int code = Raftgauge.run(call.toArray(String[]::new), new BookWorkplace(), console);
    return new Said(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Copies a folder. */
  static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = to.resolve(from.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
  }

  /** Lists a folder: each path with a hash of what stands there. */
  static List<String> tree(Path folder) throws IOException {
    List<String> lines = new ArrayList<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path path : walk.sorted().toList()) {
        boolean file = Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS);
        lines.add(folder.relativize(path) + (file ? " " + hash(Files.readAllBytes(path)) : ""));
      }
    }
    return lines;
  }

  private static String hash(byte[] bytes) {
    try {
      return HexFormat.of()
          .formatHex(java.security.MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (java.security.NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
