// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.batch.teaching.TeachFiles;
import org.raftgauge.batch.teaching.TeachRequest;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.proving.set.Condition;
import org.raftgauge.proving.set.RenderSet;
import org.raftgauge.proving.set.SetName;

/** Teaches the colour models that come with the program, from rendered photos painted by truth. */
public final class ShipModels {
  private static final double MEGAPIXELS = 2;

  private final Path work;

  private ShipModels(Path work) {
    this.work = work;
  }

  /**
   * A model to teach.
   *
   * @param name as books name it
   * @param leaf what it is for, in words
   * @param looks the conditions that it is taught from
   * @param seed of the photos
   * @param photos at most so many
   */
  private record Plan(String name, String leaf, List<String> looks, long seed, int photos) {}

  private static List<Plan> plans() {
    List<String> green =
        Arrays.stream(Condition.values())
            .filter(c -> c != Condition.RED && c != Condition.PURPLE_LAMP && c != Condition.EMPTY)
            .map(Condition::label)
            .toList();
    return List.of(
        new Plan("green-leaf-taught", "green leaf", green, 3001, 40),
        new Plan("red-leaf-taught", "red and purple leaf", List.of("red"), 3002, 18));
  }

  /**
   * Teaches all of them; this takes many minutes.
   *
   * @param work folder for photos, paintings and reports; photos in it are used again
   * @param out folder for the models' files
   * @throws IOException if a file cannot be read or written
   * @throws InputException if the photos cannot be taught from
   */
  public static void make(Path work, Path out) throws IOException, InputException {
    for (Plan plan : plans()) {
      String text = new ShipModels(work.resolve(plan.name)).teach(plan);
      Files.writeString(Files.createDirectories(out).resolve(plan.name + ".yaml"), text);
    }
  }

  private String teach(Plan plan) throws IOException, InputException {
    Path set = work.resolve("set");
    if (!Files.exists(set.resolve("truth.csv"))) {
      SetName.Order order = new SetName.Order(plan.seed, plan.photos, MEGAPIXELS, plan.looks);
      RenderSet.make(set, SetName.CONDITIONS, order, photo -> {});
    }
    List<TeachRequest.Pair> pictures = PaintTruth.of(set, work.resolve("painted"), PaintTruth.HALF);
    List<CSVRecord> truth = Table.read(set.resolve("truth.csv"));
    TeachRequest request =
        new TeachRequest(
            set.resolve("book"),
            Table.cell(truth.get(0), "crop"),
            "draft",
            Optional.empty(),
            pictures);
    TeachFiles.Written written = TeachFiles.teach(request);
    String model = Files.readString(written.model());
    return "# The colour model "
        + plan.name
        + ", which comes with the program; made by prove models.\n"
        + "crop: \"any with "
        + plan.leaf
        + "\"\n"
        + "note: \""
        + note(plan, truth)
        + "\"\n"
        + model.substring(model.indexOf("made_by:"));
  }

  /** Says what it was taught from and what range of plants that covers. */
  private static String note(Plan plan, List<CSVRecord> truth) {
    List<Double> areas =
        truth.stream()
            .map(row -> Table.number(row, "projected_area_cm2"))
            .filter(area -> area > 0)
            .toList();
    String crops =
        truth.stream()
            .map(row -> Table.cell(row, "crop"))
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    return String.format(
        Locale.ROOT,
        "taught from rendered photos of this project, seed %d, none of them real; crops: %s; plants"
            + " of %.1f to %.0f cm2 (5th to 95th percentile of %d); looks: %s. Beyond these it is"
            + " not tried. Its errors on photos that it was not taught from stand in"
            + " batch/proving/ACCURACY.md.",
        plan.seed,
        crops,
        ScoreRun.quantile(areas, 0.05),
        ScoreRun.quantile(areas, 0.95),
        areas.size(),
        String.join(", ", plan.looks));
  }
}
