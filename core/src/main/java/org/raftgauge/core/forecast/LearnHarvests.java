// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;

/**
 * Brings whole rafts' weights into the coefficients of a grader's open fit: one step of generalised
 * least squares (a Kalman update; Rasmussen and Williams 2006, section 2.1, Bayesian linear
 * regression) from the fit to single plants and its covariance, with errors that rafts of one
 * cohort share.
 */
final class LearnHarvests {
  /** Standard deviations from where a raft's weight is left out and named. */
  private static final double ODD = 4;

  /** Standard deviations from where all together weigh another thing than single plants did. */
  private static final double OTHER_THING = 3;

  private LearnHarvests() {}

  /**
   * Learns.
   *
   * @param grader fitted on single plants
   * @param lessons of its crop
   * @return the grader as the rafts leave it, with remarks of what they moved or why they did not
   */
  static Grader of(Grader grader, List<HarvestLesson> lessons) {
    Optional<RegimeFit> open = grader.fit(Regime.OPEN);
    if (lessons.isEmpty() || open.isEmpty()) {
      return grader;
    }
    RealMatrix prior = new Array2DRowRealMatrix(open.get().covariance(), false);
    List<HarvestLesson> kept = new ArrayList<>();
    List<String> remarks = new ArrayList<>();
    for (HarvestLesson lesson : lessons) {
      double variance = errors(prior, List.of(lesson)).getEntry(0, 0);
      if (Math.abs(lesson.lnOff()) > ODD * Math.sqrt(variance)) {
        remarks.add(odd(lesson));
      } else {
        kept.add(lesson);
      }
    }
    Optional<RegimeFit> learnt =
        kept.isEmpty() ? Optional.empty() : learn(open.get(), prior, kept, remarks);
    Map<Regime, RegimeFit> fits = new EnumMap<>(grader.fits());
    learnt.ifPresent(fit -> fits.put(Regime.OPEN, fit));
    Grader.Origin origin = grader.origin();
    return grader.with(fits, remarks, learnt.isPresent() ? origin(origin, kept) : origin);
  }

  private static Optional<RegimeFit> learn(
      RegimeFit open, RealMatrix prior, List<HarvestLesson> lessons, List<String> remarks) {
    RealVector off =
        new ArrayRealVector(lessons.stream().mapToDouble(HarvestLesson::lnOff).toArray(), false);
    RealMatrix inverse = MatrixUtils.inverse(errors(prior, lessons));
    RealVector ones = new ArrayRealVector(lessons.size(), 1.0);
    double information = ones.dotProduct(inverse.operate(ones));
    double level = ones.dotProduct(inverse.operate(off)) / information;
    boolean other = Math.abs(level) > OTHER_THING / Math.sqrt(information);
    remarks.add(words(lessons.size(), level, other));
    if (other) {
      return Optional.empty();
    }
    RealMatrix rows = rows(lessons);
    RealMatrix gain = prior.multiply(rows.transpose()).multiply(inverse);
    double[] moved = gain.operate(off).toArray();
    double[] coefficients = open.coefficients();
    for (int i = 0; i < coefficients.length; i++) {
      coefficients[i] += moved[i];
    }
    RealMatrix covariance = prior.subtract(gain.multiply(rows).multiply(prior));
    return Optional.of(new RegimeFit(open.numbers(), coefficients, covariance.getData()));
  }

  /** Returns the origin with the harvests in it. */
  private static Grader.Origin origin(Grader.Origin origin, List<HarvestLesson> lessons) {
    OffsetDateTime last = OffsetDateTime.parse(origin.lastWeighed());
    for (HarvestLesson lesson : lessons) {
      OffsetDateTime at = lesson.harvest().harvestedAt();
      last = at.toInstant().isAfter(last.toInstant()) ? at : last;
    }
    return new Grader.Origin(
        origin.fittedAt(),
        origin.program(),
        origin.state(),
        origin.firstWeighed(),
        last.toString(),
        origin.matchHours(),
        origin.source() + "; " + rafts(lessons.size()));
  }

  private static String rafts(int count) {
    return count == 1 ? "1 harvested raft" : count + " harvested rafts";
  }

  private static RealMatrix rows(List<HarvestLesson> lessons) {
    return MatrixUtils.createRealMatrix(
        lessons.stream()
            .map(lesson -> lesson.row().stream().mapToDouble(Double::doubleValue).toArray())
            .toArray(double[][]::new));
  }

  /** Returns the covariance of what rafts weigh beside what is told. */
  private static RealMatrix errors(RealMatrix prior, List<HarvestLesson> lessons) {
    RealMatrix rows = rows(lessons);
    RealMatrix errors = rows.multiply(prior).multiply(rows.transpose());
    for (int i = 0; i < lessons.size(); i++) {
      for (int j = 0; j < lessons.size(); j++) {
        HarvestLesson a = lessons.get(i);
        HarvestLesson b = lessons.get(j);
        double shared = a.cohort().equals(b.cohort()) ? a.sharedSd() * b.sharedSd() : 0;
        errors.addToEntry(i, j, shared + (i == j ? a.ownSd() * a.ownSd() : 0));
      }
    }
    return errors;
  }

  private static String odd(HarvestLesson lesson) {
    return String.format(
        Locale.ROOT,
        "harvests.csv:%d: %s weighed %.0f %% %s than its photos tell, too far to teach: left out;"
            + " check heads, weight and raft",
        lesson.harvest().line(),
        lesson.harvest().raft(),
        100 * Math.abs(Math.expm1(lesson.lnOff())),
        lesson.lnOff() > 0 ? "more" : "less");
  }

  private static String words(int rafts, double level, boolean other) {
    return String.format(
        Locale.ROOT,
        "open: %s weighed %.1f %% %s than single plants tell, and %s",
        rafts(rafts),
        100 * Math.abs(Math.expm1(level)),
        level > 0 ? "more" : "less",
        other
            ? "taught nothing: chance does not give as much; are both weighed alike (whole or"
                + " trimmed, wet or drained, the same scale)?"
            : "taught the fit");
  }
}
