// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Decodes the photos of a set with the system's {@code djpeg}, to nowhere. */
final class DecoderLap {
  /** The shell's clock counts in hundredths: so many decodings are timed together. */
  private static final int TOGETHER = 10;

  private static final Pattern TIME = Pattern.compile("(\\d+)m([\\d.]+)s\\s+(\\d+)m([\\d.]+)s");

  private DecoderLap() {}

  /** Runs it; empty where there is no {@code djpeg}. */
  static Optional<Lap> run(Path photos, List<String> names, int rounds)
      throws IOException, InterruptedException {
    Map<String, List<Double>> seconds = new LinkedHashMap<>();
    for (int round = 0; round < rounds; round++) {
      for (String name : names) {
        Optional<Double> took = decode(photos.resolve(name));
        if (took.isEmpty()) {
          return Optional.empty();
        }
        seconds.computeIfAbsent(name, n -> new ArrayList<>()).add(took.get());
      }
    }
    return Optional.of(new Lap(seconds, Map.of()));
  }

  private static Optional<Double> decode(Path file) throws IOException, InterruptedException {
    String loop =
        "i=0; while [ $i -lt "
            + TOGETHER
            + " ]; do djpeg -outfile /dev/null \"$1\" || exit 1; i=$((i + 1)); done; times";
    Process process;
    try {
      process =
          new ProcessBuilder("sh", "-c", loop, "sh", file.toString())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      return Optional.empty(); // no shell
    }
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      return Optional.empty();
    }
    // The second line is of the children: user and system.
    Matcher times = TIME.matcher(said.lines().skip(1).findFirst().orElse(""));
    return times.find()
        ? Optional.of((part(times, 1) + part(times, 3)) / TOGETHER)
        : Optional.empty();
  }

  private static double part(Matcher times, int group) {
    return 60 * Double.parseDouble(times.group(group)) + Double.parseDouble(times.group(group + 1));
  }
}
