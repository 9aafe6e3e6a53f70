// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.proving.truth.PlantTruth;

/**
 * Keeps what came of pairs in the folder of the photos, by the commit that measured them, so that a
 * long proof can be made in several goes.
 */
final class KeptScores {
  private final Path folder;

  KeptScores(Path work, long seed, String stamp) {
    this.folder = work.resolve("scores-" + seed + "-" + stamp.replaceAll("[^A-Za-z0-9]+", "-"));
  }

  /** Makes a score. */
  interface Maker {
    ScorePair make() throws IOException;
  }

  /** Returns the score of a pair: the kept one, or a new one, which is then kept. */
  ScorePair of(PairStation station, PairCanopy canopy, Maker maker) throws IOException {
    Path file = folder.resolve(station.code() + "-" + canopy.code() + ".bin");
    if (Files.exists(file)) {
      try (DataInputStream in =
          new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
        return read(station, canopy, in);
      }
    }
    ScorePair score = maker.make();
    Files.createDirectories(folder);
    Path part = folder.resolve(file.getFileName() + ".part");
    try (DataOutputStream out =
        new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(part)))) {
      write(score, out);
    }
    Files.move(part, file);
    return score;
  }

  private static void write(ScorePair score, DataOutputStream out) throws IOException {
    out.writeInt(score.pixels().leaf());
    numbers(score.pixels().errorsMm(), out);
    out.writeInt(score.plants().size());
    for (ScorePair.Plant plant : score.plants()) {
      PlantTruth truth = plant.truth();
      numbers(
          new double[] {
            truth.projectedAreaCm2(),
            truth.visibleAreaCm2(),
            truth.meanHeightMm(),
            truth.topHeightMm()
          },
          out);
      numbers(plant.seen(), out);
      numbers(plant.areasCm2(), out);
    }
    out.writeInt(score.notes().size());
    for (String note : score.notes()) {
      out.writeUTF(note);
    }
  }

  private static ScorePair read(PairStation station, PairCanopy canopy, DataInputStream in)
      throws IOException {
    ScorePair.Pixels pixels = new ScorePair.Pixels(in.readInt(), numbers(in));
    List<ScorePair.Plant> plants = new ArrayList<>();
    int n = in.readInt();
    for (int i = 0; i < n; i++) {
      double[] t = numbers(in);
      PlantTruth truth = new PlantTruth(t[0], t[1], t[2], t[3]);
      plants.add(new ScorePair.Plant(truth, numbers(in), numbers(in)));
    }
    List<String> notes = new ArrayList<>();
    int lines = in.readInt();
    for (int i = 0; i < lines; i++) {
      notes.add(in.readUTF());
    }
    return new ScorePair(station, canopy, pixels, plants, notes);
  }

  private static void numbers(double[] numbers, DataOutputStream out) throws IOException {
    out.writeInt(numbers.length);
    for (double number : numbers) {
      out.writeDouble(number);
    }
  }

  private static double[] numbers(DataInputStream in) throws IOException {
    double[] numbers = new double[in.readInt()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = in.readDouble();
    }
    return numbers;
  }
}
