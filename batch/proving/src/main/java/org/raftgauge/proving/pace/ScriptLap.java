// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.proving.accuracy.SiteKey;

/** Measures the photos of a set with the plain Python script that lies beside the benchmark. */
final class ScriptLap {
  private static final List<String> PYTHONS = List.of("python3", "/usr/bin/python3");

  private ScriptLap() {}

  /** Runs it; empty where no Python has OpenCV. */
  static Optional<Lap> run(Path script, Path task, int rounds)
      throws IOException, InterruptedException {
    for (String python : PYTHONS) {
      if (has(python)) {
        return Optional.of(run(List.of(python, script.toString(), task.toString(), "" + rounds)));
      }
    }
    return Optional.empty();
  }

  private static boolean has(String python) throws InterruptedException {
    try {
      return new ProcessBuilder(python, "-c", "import cv2.aruco")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private static Lap run(List<String> call) throws IOException, InterruptedException {
    Path errors = Files.createTempFile("pace", ".txt");
    Process process = new ProcessBuilder(call).redirectError(errors.toFile()).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int code = process.waitFor();
    String wrong = Files.readString(errors);
    Files.delete(errors);
    if (code != 0) {
      throw new IOException("the Python script failed:\n" + wrong);
    }
    Map<String, List<Double>> seconds = new LinkedHashMap<>();
    Map<SiteKey, Double> areas = new LinkedHashMap<>();
    for (String line : said.lines().toList()) {
      String[] cells = line.split(",", -1);
      if (cells[0].equals("area")) {
        String file = cells[1].substring(cells[1].lastIndexOf('/') + 1);
        areas.put(new SiteKey(file, cells[2], cells[3]), Double.parseDouble(cells[4]));
      } else {
        List<Double> rounds = new ArrayList<>();
        for (int i = 2; i < cells.length; i++) {
          rounds.add(Double.parseDouble(cells[i]));
        }
        seconds.put(cells[1], rounds);
      }
    }
    return new Lap(seconds, areas);
  }
}
