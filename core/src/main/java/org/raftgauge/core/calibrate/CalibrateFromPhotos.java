// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Calibrates a lens from the photos that are fit for it, and says which were left out and why.
 *
 * <p>The limits are working values without a source.
 */
public final class CalibrateFromPhotos {
  /** A photo blurred so many times as much as the others is left out, if over the next limit. */
  private static final double BLUR_TIMES = 1.8;

  private static final double BLUR_PX = 1.3;

  /** Likewise for the distance between points seen and foretold. */
  private static final double MISS_TIMES = 3;

  private static final double MISS_PX = 0.5;

  /** Photos are left out for their misses only while so many remain. */
  private static final int KEEP = 6;

  private final Set<LensTerm> terms;
  private final List<LensReport.LeftOut> leftOut = new ArrayList<>();

  private CalibrateFromPhotos(Set<LensTerm> terms) {
    this.terms = terms;
  }

  /**
   * Calibrates.
   *
   * @param sightings what each photo shows of the target
   * @param terms what to fit besides fx, cx and cy
   * @return the lens, what was left out, what to take again
   */
  public static LensReport from(List<TargetSighting> sightings, Set<LensTerm> terms) {
    return new CalibrateFromPhotos(terms).calibrate(sightings);
  }

  private LensReport calibrate(List<TargetSighting> sightings) {
    List<TargetSighting> usable = sharp(sameSize(found(sightings)));
    if (usable.isEmpty() && !sightings.isEmpty()) {
      return new LensReport(new NoLens(nowhere(sightings.size())), leftOut, List.of());
    }
    LensResult result = CalibrateLens.fit(usable, terms);
    Optional<TargetSighting> odd = odd(result, usable);
    while (odd.isPresent() && usable.size() > KEEP) {
      usable = without(usable, odd.get());
      result = CalibrateLens.fit(usable, terms);
      odd = odd(result, usable);
    }
    List<String> retake = result instanceof LensFit fit ? JudgeLens.retake(fit) : List.of();
    return new LensReport(result, leftOut, retake);
  }

  private static String nowhere(int photos) {
    return "the whole target was found in none of "
        + photos
        + (photos == 1 ? " photo" : " photos")
        + "; see that kind, columns and rows are those printed (a chessboard's squares are counted,"
        + " not its corners) and that nothing covers it";
  }

  private void leaveOut(TargetSighting sighting, String why) {
    leftOut.add(new LensReport.LeftOut(sighting.photo(), why));
  }

  private List<TargetSighting> found(List<TargetSighting> sightings) {
    sightings.stream()
        .filter(s -> !s.found())
        .forEach(s -> leaveOut(s, "the whole target was not found in it"));
    return sightings.stream().filter(TargetSighting::found).toList();
  }

  private List<TargetSighting> sameSize(List<TargetSighting> sightings) {
    Map<String, Integer> photosOfSize = new HashMap<>();
    sightings.forEach(s -> photosOfSize.merge(size(s), 1, Integer::sum));
    Optional<String> usual =
        photosOfSize.entrySet().stream()
            .max(
                Map.Entry.<String, Integer>comparingByValue()
                    .thenComparing(Map.Entry.comparingByKey()))
            .map(Map.Entry::getKey);
    sightings.stream()
        .filter(s -> !size(s).equals(usual.orElse("")))
        .forEach(
            s -> leaveOut(s, "it is " + size(s) + " px, the others are " + usual.get() + " px"));
    return sightings.stream().filter(s -> size(s).equals(usual.orElse(""))).toList();
  }

  private static String size(TargetSighting s) {
    return s.widthPx() + " x " + s.heightPx();
  }

  private List<TargetSighting> sharp(List<TargetSighting> sightings) {
    double[] blurs =
        sightings.stream()
            .map(TargetSighting::blurPx)
            .flatMapToDouble(OptionalDouble::stream)
            .sorted()
            .toArray();
    double usual = blurs.length == 0 ? 0 : blurs[(blurs.length - 1) / 2];
    double limit = Math.max(BLUR_PX, BLUR_TIMES * usual);
    List<TargetSighting> sharp = new ArrayList<>();
    for (TargetSighting s : sightings) {
      double blur = s.blurPx().orElse(0);
      if (blur > limit) {
        leaveOut(
            s,
            String.format(
                Locale.ROOT,
                "it is blurred: its edges by %.1f px, the others' by %.1f",
                blur,
                usual));
      } else {
        sharp.add(s);
      }
    }
    return sharp;
  }

  /** Returns the photo that fits worst, if it fits far worse than the others. */
  private static Optional<TargetSighting> odd(LensResult result, List<TargetSighting> sightings) {
    if (!(result instanceof LensFit fit)) {
      return Optional.empty();
    }
    double[] misses = fit.views().stream().mapToDouble(ViewFit::meanErrorPx).sorted().toArray();
    double limit = Math.max(MISS_PX, MISS_TIMES * misses[(misses.length - 1) / 2]);
    return fit.views().stream()
        .max(Comparator.comparingDouble(ViewFit::meanErrorPx))
        .filter(v -> v.meanErrorPx() > limit)
        .flatMap(v -> sightings.stream().filter(s -> s.photo().equals(v.photo())).findFirst());
  }

  private List<TargetSighting> without(List<TargetSighting> sightings, TargetSighting odd) {
    leaveOut(
        odd,
        "its points do not fit the lens that the others agree on: the target was misread, bent or"
            + " moving");
    return sightings.stream().filter(s -> !s.photo().equals(odd.photo())).toList();
  }
}
