// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.grader.HeightFit;
import org.raftgauge.core.measure.HeightPicture;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.truth.MeasureTruth;
import org.raftgauge.proving.truth.PlantTruth;
import org.raftgauge.proving.truth.RayHeights;

/**
 * What came of one pair of photos.
 *
 * @param station the cameras
 * @param canopy what they saw
 * @param pixels heights of leaf pixels
 * @param plants open plants with the areas found
 * @param notes what the program said of the raft
 */
record ScorePair(
    PairStation station, PairCanopy canopy, Pixels pixels, List<Plant> plants, List<String> notes) {
  /** A plant that others cover by more than this has no whole area that a photo could show. */
  private static final double OPEN = 0.97;

  /**
   * Heights of leaf pixels.
   *
   * @param leaf pixels whose ray meets a plant
   * @param errorsMm found less true, of those that were given a height
   */
  record Pixels(int leaf, double[] errorsMm) {}

  /**
   * A plant.
   *
   * @param truth the truth
   * @param seen mean height, mm, and volume, cm3, found from the pair; empty where it fell back on
   *     the model
   * @param areasCm2 found by the pair, by the crop's model, by one 30 % too high, 30 % too low; by
   *     the pair alone where the models were not asked
   */
  record Plant(PlantTruth truth, double[] seen, double[] areasCm2) {}

  /** A canopy that was grown, and the truth about it. */
  record Grown(PairCanopy canopy, long seed, Scene scene, Map<Integer, PlantTruth> truths) {

    static Grown of(PairCanopy canopy, long seed) {
      Scene scene = canopy.scene(seed);
      return new Grown(canopy, seed, scene, MeasureTruth.measure(scene.mesh()));
    }
  }

  /** Photographs, measures and scores a canopy; with one camera too, where models are asked. */
  static ScorePair of(PairStation station, Grown grown, Path work) throws IOException {
    PairCanopy canopy = grown.canopy;
    Map<Integer, PlantTruth> truths = grown.truths;
    List<Path> photos = new PhotographPair(station, canopy, grown.seed).into(work, grown.scene);
    HeightModel model = model(truths);
    Measure measure = new Measure(station, canopy, photos, work.resolve("book"));
    PhotoResult pair = measure.by(model, true);
    List<PhotoResult> alone = new ArrayList<>();
    for (double share : station.asksModels() ? new double[] {1, 1.3, 0.7} : new double[0]) {
      alone.add(measure.by(scaled(model, share), false));
    }
    float[] truth = RayHeights.of(grown.scene.mesh(), station.first());
    return new ScorePair(
        station,
        canopy,
        pixels(pair, truth),
        plants(truths, pair, alone),
        pair.measure().rafts().stream().flatMap(r -> r.notes().stream()).toList());
  }

  /** Fits the crop's model to these very plants: it can do no better. */
  private static HeightModel model(Map<Integer, PlantTruth> truths) {
    List<HeightFit.Sample> samples =
        truths.values().stream()
            .filter(t -> t.projectedAreaCm2() > 0)
            .map(
                t ->
                    new HeightFit.Sample(
                        t.projectedAreaCm2(), t.topHeightMm(), OptionalDouble.of(t.meanHeightMm())))
            .toList();
    return HeightFit.fit(samples).orElseThrow().model();
  }

  private static HeightModel scaled(HeightModel model, double share) {
    return new HeightModel(share * model.scaleMm(), model.exponent(), model.meanToTop());
  }

  /** Measures the photos by a height model, with the second camera or without. */
  private record Measure(PairStation station, PairCanopy canopy, List<Path> photos, Path folder) {

    PhotoResult by(HeightModel model, boolean withSecond) throws IOException {
      CropBook book = PairBook.write(folder, station, canopy, model);
      PhotoFacts facts =
          new PhotoFacts(
              photos.get(0).getFileName().toString(),
              Optional.of("2026-04-10T20:00:00+00:00"),
              Optional.of(PairBook.STATION),
              Optional.empty(),
              Optional.of(PairBook.RAFT));
      Optional<byte[]> second =
          withSecond ? Optional.of(Files.readAllBytes(photos.get(1))) : Optional.empty();
      return MeasurePhoto.measure(Files.readAllBytes(photos.get(0)), second, facts, book);
    }
  }

  private static Pixels pixels(PhotoResult result, float[] truthMm) {
    Optional<HeightPicture> heights = result.heights();
    double[] errors = new double[truthMm.length];
    int leaf = 0;
    int n = 0;
    for (int i = 0; i < truthMm.length; i++) {
      if (!Float.isNaN(truthMm[i])) {
        leaf++;
        if (heights.isPresent() && heights.get().seen(i)) {
          errors[n++] = heights.get().mm(i) - truthMm[i];
        }
      }
    }
    return new Pixels(leaf, Arrays.copyOf(errors, n));
  }

  private static List<Plant> plants(
      Map<Integer, PlantTruth> truths, PhotoResult pair, List<PhotoResult> alone) {
    List<Plant> plants = new ArrayList<>();
    for (Map.Entry<Integer, PlantTruth> entry : truths.entrySet()) {
      PlantTruth truth = entry.getValue();
      if (truth.visibleAreaCm2() >= OPEN * truth.projectedAreaCm2()) {
        int place = entry.getKey() - 1;
        SiteMeasure seen = site(pair, place);
        double[] areas =
            Stream.concat(Stream.of(pair), alone.stream())
                .mapToDouble(result -> area(site(result, place)))
                .toArray();
        plants.add(
            new Plant(
                truth,
                seen.relief().stream()
                    .flatMapToDouble(r -> DoubleStream.of(seen.heightMm(), r.volumeCm3()))
                    .toArray(),
                areas));
      }
    }
    return plants;
  }

  private static SiteMeasure site(PhotoResult result, int place) {
    return result.measure().rafts().get(0).sites().get(place);
  }

  private static double area(SiteMeasure site) {
    return site.projectedAreaCm2().orElse(0);
  }
}
