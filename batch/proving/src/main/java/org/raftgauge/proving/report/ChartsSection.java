// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.proving.accuracy.ChartPhoto;

/** How true colours are: photos of a chart of 24 known colours, before and after evening. */
final class ChartsSection {
  private static final String TITLE = "Colours against a chart";

  /** Photos of the shared data, and where four of their patches lie (read off by eye), px. */
  private static final List<Chart> CHARTS =
      List.of(
          new Chart(
              "paper and floor, shade",
              "macduff/examples/below_fishbox.jpg",
              List.of(1346, 984, 1684, 982, 1346, 1190, 1686, 1186)),
          new Chart(
              "the same again",
              "macduff/examples/below_fishbox2.jpg",
              List.of(1346, 984, 1684, 982, 1346, 1190, 1686, 1186)),
          new Chart(
              "hand-held by a window",
              "mcc/img-colorchecker.jpg",
              List.of(260, 302, 512, 300, 260, 453, 515, 444)));

  private ChartsSection() {}

  private record Chart(String name, String file, List<Integer> corners) {}

  static Section make(Bench bench) throws IOException {
    Optional<Path> data = bench.shared("colour-charts");
    if (data.isEmpty()) {
      return new Section(TITLE, "Not run: the photos are not beside the project.\n", "");
    }
    StringBuilder body = new StringBuilder();
    body.append(
        """
        Leaf colour, and with it `pale`, stands on the board as white. How true such colours are is
        tried on photos of a chart of 24 printed colours: mean and largest difference (CIEDE2000; 1 is
        hardly seen, 5 is plain) of the 23 that are not white, as the camera gives them and after each
        channel is divided by the white's, as a run does with the board. The chart's makers changed its
        colours in 2014; which of the two is in a photo is not known, so both are given. What is left is
        the camera's own rendering of colour, which is the same every evening: plants are therefore
        compared with their cohort's colour, and only then with absolute limits.

        | photo | chart | as taken: mean | largest | evened on white: mean | largest |
        | --- | --- | ---: | ---: | ---: | ---: |
        """);
    for (Chart chart : CHARTS) {
      byte[] bytes = Files.readAllBytes(data.get().resolve(chart.file));
      if (DecodePhoto.decode(bytes) instanceof DecodedPhoto photo) {
        ChartPhoto read =
            ChartPhoto.of(
                photo.image(), chart.corners.stream().mapToInt(Integer::intValue).toArray());
        body.append(row(chart.name, "before 2014", read, truth(1)));
        body.append(row(chart.name, "since 2014", read, truth(4)));
      } else {
        throw new IOException("the chart photo " + chart.file + " cannot be read");
      }
    }
    return new Section(TITLE, body.toString(), "");
  }

  private static String row(String name, String chart, ChartPhoto photo, double[][] truth) {
    ChartPhoto.Difference before = photo.asTaken(truth);
    ChartPhoto.Difference after = photo.onWhite(truth);
    return String.format(
        Locale.ROOT,
        "| %s | %s | %.1f | %.1f | %.1f | %.1f |\n",
        name,
        chart,
        before.mean(),
        before.worst(),
        after.mean(),
        after.worst());
  }

  /** Linear sRGB of the patches, from the column on that is given. */
  private static double[][] truth(int column) throws IOException {
    try (InputStream in =
            Objects.requireNonNull(
                ChartPhoto.class.getResourceAsStream("chart24.csv"), "chart24.csv is missing");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> Character.isDigit(line.charAt(0)))
          .map(line -> linear(line.split(","), column))
          .toArray(double[][]::new);
    }
  }

  private static double[] linear(String[] cells, int column) {
    double[] rgb = new double[3];
    for (int c = 0; c < 3; c++) {
      rgb[c] = Srgb.linear(Double.parseDouble(cells[column + c]));
    }
    return rgb;
  }
}
