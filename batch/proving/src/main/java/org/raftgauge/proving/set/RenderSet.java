// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.raftgauge.proving.set.MakePhoto.Made;
import org.raftgauge.proving.truth.PlantTruth;

/**
 * Makes a whole set: {@code photos/} with a manifest, {@code labels/}, {@code coverage/}, {@code
 * truth.csv}, {@code poses.csv} and {@code book/}.
 */
public final class RenderSet {
  private static final String TRUTH_HEADER =
      "photo,raft,site,label,projected_area_cm2,visible_area_cm2,mean_height_mm,top_height_mm,kind,"
          + "condition,habit,crop,stage,station";

  private RenderSet() {}

  /**
   * Makes a set in a folder; files of the same names are replaced.
   *
   * @param out the folder
   * @param name which set
   * @param order seed, number and size of the photos
   * @param progress told each photo's path when it is done
   * @throws IOException if a file cannot be written
   */
  public static void make(Path out, SetName name, SetName.Order order, Consumer<String> progress)
      throws IOException {
    Files.createDirectories(out);
    List<Made> made = new ArrayList<>();
    for (PhotoPlan plan : name.plan(order)) {
      made.add(MakePhoto.make(plan, out));
      progress.accept(plan.path());
    }
    writeTruth(out.resolve("truth.csv"), made);
    PoseFile.write(out.resolve("poses.csv"), made);
    writeManifest(out.resolve("photos").resolve("manifest.csv"), made);
    BookFiles.write(out.resolve("book"), made);
  }

  private static void writeTruth(Path file, List<Made> made) throws IOException {
    List<String> lines = new ArrayList<>(List.of(TRUTH_HEADER));
    for (Made photo : made) {
      photo.sites().forEach(site -> lines.add(row(site)));
    }
    write(file, lines);
  }

  private static String row(SitePoint site) {
    PlantTruth truth = site.truth();
    PhotoPlan plan = site.plan();
    return String.format(
        Locale.ROOT,
        "%s,%s,%s,%d,%.3f,%.3f,%.2f,%.2f,%s,%s,%s,%s,%s,%s",
        plan.path(),
        site.raft(),
        site.site(),
        site.label(),
        truth.projectedAreaCm2(),
        truth.visibleAreaCm2(),
        truth.meanHeightMm(),
        truth.topHeightMm(),
        site.kind(),
        plan.look(),
        plan.crop().habit().name().toLowerCase(Locale.ROOT),
        plan.crop().crop(),
        plan.stage().name().toLowerCase(Locale.ROOT),
        plan.station().name());
  }

  private static void writeManifest(Path file, List<Made> made) throws IOException {
    List<String> lines = new ArrayList<>(List.of("photo,taken_at,station,slot,raft"));
    for (Made photo : made) {
      lines.add(
          photo.plan().path()
              + ","
              + photo.plan().date()
              + "T18:00:00+00:00,"
              + photo.plan().station().name()
              + ",,");
    }
    write(file, lines);
  }

  static void write(Path file, List<String> lines) throws IOException {
    Files.writeString(file, String.join("\r\n", lines) + "\r\n");
  }
}
