// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.proving.accuracy.PlainScript;
import org.raftgauge.proving.accuracy.PoseJson;
import org.raftgauge.proving.accuracy.TruthSite;

/** Path-traced photos from a renderer that shares nothing with this project. */
final class PathTracedSection {
  private static final String TITLE = "Path-traced photos from another renderer";
  private static final String RED = "redleaf";

  private PathTracedSection() {}

  static Section make(Bench bench) throws IOException {
    Optional<Path> data = bench.shared("path-traced");
    if (data.isEmpty()) {
      return new Section(TITLE, "Not measured: the shared test data was not there.\n", "");
    }
    Path work = bench.work().resolve("path-traced");
    Path photos = data.get().resolve("photos");
    Path book = data.get().resolve("book");
    Path sites = RunBatch.over(photos, book, work);
    Path plain =
        Compare.write(
            work.resolve("plain-script.csv"),
            PlainScript.measure(
                photos,
                PoseJson.read(data.get().resolve("camera.json"), CropBook.read(book).book())));
    Path truth = data.get().resolve("truth.csv");
    Compare crops = Compare.on(TruthSite.read(truth, "cultivar"), sites, plain);
    Compare lights = Compare.on(TruthSite.read(truth, "condition"), sites, plain);
    Compare colours = Compare.on(byColour(truth), sites, plain);
    String body =
        "Twelve photos of butterhead, red leaf and basil at several stages, from a renderer that"
            + " shares no code with this project; the truth is exact.\n\nBy leaf colour:\n\n"
            + SummaryRows.HEAD
            + SummaryRows.of(colours.ours(), colours.plain())
            + "\nBy crop:\n\n"
            + crops.tables()
            + "By condition:\n\n"
            + lights.tables();
    return new Section(
        TITLE,
        body,
        colours.row("path-traced, green leaf", "green leaf")
            + colours.row("path-traced, red leaf", "red leaf"));
  }

  private static List<TruthSite> byColour(Path truth) throws IOException {
    List<TruthSite> sites = new ArrayList<>();
    for (TruthSite site : TruthSite.read(truth, "cultivar")) {
      String colour = site.look().equals(RED) ? "red leaf" : "green leaf";
      sites.add(new TruthSite(site.key(), colour, site.projectedAreaCm2(), site.visibleAreaCm2()));
    }
    return sites;
  }
}
