// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.proving.accuracy.PlainScript;
import org.raftgauge.proving.accuracy.PoseJson;
import org.raftgauge.proving.accuracy.TruthSite;

/** The sample scenario against its exact truth. */
final class SamplesSection {

  private SamplesSection() {}

  static Section make(Bench bench) throws IOException {
    Path samples = bench.root().resolve("sample-images");
    Path work = bench.work().resolve("samples");
    Path photos = samples.resolve("photos");
    Path book = samples.resolve("book");
    Path sites = RunBatch.over(photos, book, work);
    Path plain =
        Compare.write(
            work.resolve("plain-script.csv"),
            PlainScript.measure(
                photos,
                PoseJson.read(samples.resolve("cameras.json"), CropBook.read(book).book())));
    Compare rafts = Compare.on(TruthSite.read(samples.resolve("truth.csv"), "raft"), sites, plain);
    String body =
        "The fourteen sample photos, raft by raft over all their dates. Sites that the book knows"
            + " to be unplanted have no row in `sites.csv`; they stand among the empty ones, in"
            + " brackets as without an answer.\n\n"
            + rafts.tables();
    return new Section("The sample photos", body, rafts.row("sample photos", "all"));
  }
}
