// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Fits a grader to weighed plants of one crop. */
public final class FitGrader {
  /** A variety with fewer weighings cannot be told from the others, and is put aside. */
  private static final int FEWEST_OF_VARIETY = 4;

  private FitGrader() {}

  /**
   * Fits.
   *
   * @param crop the crop
   * @param weighed its weighed plants; suspects are named in the remarks, none is dropped
   * @param rule what it may be fitted on
   * @param origin where the weighings come from
   * @return a grader with at least one regime, or why there is none
   */
  public static GraderResult fit(
      String crop, List<Weighed> weighed, FitRule rule, Grader.Origin origin) {
    if (weighed.size() < rule.fewest()) {
      return new GraderResult.NotFitted(
          weighed.size()
              + " weighings of "
              + crop
              + " could be joined with photos; a grader needs at least "
              + rule.fewest()
              + ", spread over the whole range of weights (see grader picks)");
    }
    Map<Regime, RegimeFit> fits = new EnumMap<>(Regime.class);
    Map<Regime, String> refused = new EnumMap<>(Regime.class);
    List<String> remarks = new ArrayList<>();
    for (Regime regime : Regime.values()) {
      List<Weighed> own = weighed.stream().filter(w -> w.regime() == regime).toList();
      List<Weighed> kept = withoutThinVarieties(own, regime, remarks);
      Sizes sizes = known(kept, rule.sizes(regime));
      Optional<String> unfit = WhyRefused.unfit(kept, regime, rule.fewest());
      Optional<RegimeFit> open = Optional.ofNullable(fits.get(Regime.OPEN));
      Optional<RegimeFit> fit =
          unfit.isPresent()
              ? Optional.empty()
              : FitRegime.fit(kept, sizes.known())
                  .map(f -> regime == Regime.OPEN ? f : ShrinkClosed.of(open, f, kept));
      unfit
          .or(
              () ->
                  fit.isEmpty()
                      ? Optional.of(WhyRefused.lacking(kept, regime, sizes.missing()))
                      : WhyRefused.falling(fit.get(), regime))
          .ifPresentOrElse(
              why -> refused.put(regime, why), () -> fits.put(regime, fit.orElseThrow()));
      Optional.ofNullable(fits.get(regime)).ifPresent(f -> warn(f, regime, remarks));
      ReviewWeighings.review(kept).forEach(s -> remarks.add(regime + ": " + s.words()));
    }
    if (fits.isEmpty()) {
      return new GraderResult.NotFitted(String.join("; ", refused.values()));
    }
    return new Grader(crop, origin, fits, refused, heights(weighed), remarks);
  }

  private static void warn(RegimeFit fit, Regime regime, List<String> remarks) {
    LeftOut leftOut = fit.numbers().leftOut();
    if (leftOut.tellsNothing()) {
      remarks.add(
          String.format(
              Locale.ROOT,
              "%s: a grader that misses a plant by %.0f %% on average is of no use; look in"
                  + " weighings.csv whether every fresh_weight_g is in grams, and of the plant that"
                  + " raft and site name",
              regime,
              100 * leftOut.meanShare()));
    }
    if (regime == Regime.CLOSED && fit.numbers().validity().ranges().containsKey(Size.AREA)) {
      remarks.add(
          "closed: told from the area that closed sites show, which stops growing once the canopy"
              + " is full: these weights fall behind then; measured heights or growth curves do"
              + " not");
    }
  }

  /** The sizes that every plant has, and those that some lack. */
  private record Sizes(Set<Size> known, Set<Size> missing) {}

  private static Sizes known(List<Weighed> weighed, Set<Size> wanted) {
    Map<Boolean, Set<Size>> split =
        wanted.stream()
            .collect(
                Collectors.partitioningBy(
                    size -> weighed.stream().allMatch(w -> size.of(w.traits()).isPresent()),
                    Collectors.toSet()));
    Set<Size> known = split.get(true);
    if (known.contains(Size.CURVE)) {
      // What a closed site shows stops growing; its own curve does not.
      known.remove(Size.AREA);
    }
    return new Sizes(known, split.get(false));
  }

  private static List<Weighed> withoutThinVarieties(
      List<Weighed> weighed, Regime regime, List<String> remarks) {
    Map<String, Long> counts =
        weighed.stream()
            .collect(
                Collectors.groupingBy(
                    w -> w.traits().variety(), TreeMap::new, Collectors.counting()));
    if (counts.size() < 2 || counts.values().stream().allMatch(n -> n < FEWEST_OF_VARIETY)) {
      return weighed;
    }
    counts.forEach(
        (variety, n) -> {
          if (n < FEWEST_OF_VARIETY) {
            remarks.add(
                regime
                    + ": variety \""
                    + variety
                    + "\" has only "
                    + n
                    + " of the "
                    + FEWEST_OF_VARIETY
                    + " weighings it needs, which were put aside; weigh more of it");
          }
        });
    return weighed.stream()
        .filter(w -> counts.get(w.traits().variety()) >= FEWEST_OF_VARIETY)
        .toList();
  }

  private static Optional<HeightFit> heights(List<Weighed> weighed) {
    return HeightFit.fit(
        weighed.stream()
            .map(Weighed::traits)
            .filter(t -> t.areaCm2().isPresent() && t.topHeightMm().isPresent())
            .map(
                t ->
                    new HeightFit.Sample(
                        t.areaCm2().getAsDouble(), t.topHeightMm().getAsDouble(), t.meanHeightMm()))
            .toList());
  }
}
