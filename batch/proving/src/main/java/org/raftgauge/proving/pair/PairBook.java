// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.proving.set.LayoutText;

/** The crop book of a pair's photos. */
final class PairBook {
  static final String RAFT = "PR-1";
  static final String STATION = "pair";

  private PairBook() {}

  /** Writes and reads a book. */
  static CropBook write(Path folder, PairStation station, PairCanopy canopy, HeightModel model)
      throws IOException {
    Files.createDirectories(folder.resolve("stations"));
    Files.writeString(
        folder.resolve("book.yaml"),
        "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: pair\nunits: metric\n");
    Files.writeString(folder.resolve("stations/pair.yaml"), station.yaml());
    Files.writeString(folder.resolve("layouts.yaml"), LayoutText.of(PairCanopy.LAYOUT));
    Files.writeString(
        folder.resolve("crops.yaml"),
        String.format(
            Locale.ROOT,
            "crops:%n  crop:%n    colour_model: %s%n    height_model: {scale_mm: %.4f, exponent:"
                + " %.4f, mean_to_top: %.3f}%n    emerged_by_das: 7%n    limits: {lagging_share:"
                + " 0.78, ahead_share: 1.35, closed_outline: 0.35}%n",
            canopy.crop().colourModel(),
            model.scaleMm(),
            model.exponent(),
            model.meanToTop()));
    Files.writeString(
        folder.resolve("plantings.csv"),
        "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n"
            + "PR-1,P1,,crop,,"
            + PairCanopy.LAYOUT.name()
            + ",,2026-03-01,2026-03-15,,,\n");
    return CropBook.read(folder).book();
  }
}
