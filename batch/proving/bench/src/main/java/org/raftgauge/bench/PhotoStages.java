// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.Manifest;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.canopy.SegmentCanopy;
import org.raftgauge.core.measure.LightPhoto;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodeResult;
import org.raftgauge.core.site.Ground;
import org.raftgauge.core.site.MeasureSites;
import org.raftgauge.core.site.SiteCanopy;

/**
 * Times the stages of one photo of a rendered set: decoding; decoding, finding boards and evening
 * their light; segmentation; allotment and site measures; all of it from file to site measures.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 3)
@Measurement(iterations = 5, time = 3)
public class PhotoStages {
  /** Folder of a set as {@code prove render} or {@code prove pace} make it. */
  @Param("set")
  public String set;

  /** Which photo of its manifest, from 0. */
  @Param("0")
  public int photo;

  private byte[] bytes;
  private PhotoFacts facts;
  private CropBook book;
  private List<LitBoard> boards;
  private List<Canopy> canopies;

  /** Reads the photo and takes it as far as its canopy. */
  @Setup
  public void read() throws IOException {
    Path photos = Path.of(set, "photos");
    book = CropBook.read(Path.of(set, "book")).book();
    var row =
        List.copyOf(Manifest.read(photos.resolve("manifest.csv")).rows().entrySet()).get(photo);
    facts =
        new PhotoFacts(
            row.getKey(),
            row.getValue().takenAt(),
            row.getValue().station(),
            row.getValue().slot(),
            row.getValue().raft());
    bytes = Files.readAllBytes(photos.resolve(row.getKey()));
    boards = light();
    canopies = segmentation();
  }

  /** Decodes the file to an upright picture of all its pixels. */
  @Benchmark
  public DecodeResult decoding() {
    return DecodePhoto.decode(bytes);
  }

  /** Decodes, finds the boards, draws their decks and evens the light. */
  @Benchmark
  public List<LitBoard> light() {
    return LightPhoto.light(bytes, facts, book).boards();
  }

  /** Tells leaf on all boards. */
  @Benchmark
  public List<Canopy> segmentation() {
    List<Canopy> found = new ArrayList<>();
    for (LitBoard board : boards) {
      found.add(
          SegmentCanopy.on(
              board.deck(), board.layout(), board.light(), place -> LeafModel.GREEN_LEAF));
    }
    return found;
  }

  /** Allots the canopies of all boards to sites and measures these. */
  @Benchmark
  public List<SiteCanopy> sites() {
    List<SiteCanopy> measured = new ArrayList<>();
    for (int i = 0; i < boards.size(); i++) {
      LitBoard board = boards.get(i);
      int n = board.layout().grid().sites().size();
      Ground ground =
          new Ground(
              board.deck(),
              board.layout(),
              board.pose(),
              1,
              Collections.nCopies(n, new HeightModel(0, 0, 0.5)),
              Collections.nCopies(n, 0.35));
      measured.add(MeasureSites.of(ground, canopies.get(i)));
    }
    return measured;
  }

  /** Measures the photo as a run does. */
  @Benchmark
  public PhotoMeasure all() {
    return MeasurePhoto.measure(bytes, facts, book).measure();
  }
}
