// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A fitted grader of one crop.
 *
 * @param crop the crop
 * @param origin where it comes from
 * @param fits the fits by regime; a regime without one cannot be weighed
 * @param refused why a regime has no fit, by regime
 * @param height the height model, where heights were measured
 * @param remarks what a reader must know: suspects and what was put aside, each in words
 */
public record Grader(
    String crop,
    Origin origin,
    Map<Regime, RegimeFit> fits,
    Map<Regime, String> refused,
    Optional<HeightFit> height,
    List<String> remarks)
    implements GraderResult {

  /**
   * Where a grader comes from.
   *
   * @param fittedAt when it was fitted, ISO 8601
   * @param program the program's version
   * @param state how the plants were weighed: {@code whole}, {@code trimmed}, {@code drained} or
   *     {@code unsaid}
   * @param firstWeighed time of the first weighing, ISO 8601
   * @param lastWeighed time of the last weighing, ISO 8601
   * @param matchHours how far photo and weighing were allowed to lie apart
   * @param source what it was fitted on, in words
   */
  public record Origin(
      String fittedAt,
      String program,
      String state,
      String firstWeighed,
      String lastWeighed,
      double matchHours,
      String source) {

    /**
     * Says whether it was fitted, on weighings taken, before an instant; a time that cannot be read
     * counts as later.
     *
     * @param end the instant
     */
    public boolean knownBefore(Instant end) {
      try {
        return OffsetDateTime.parse(fittedAt).toInstant().isBefore(end)
            && OffsetDateTime.parse(lastWeighed).toInstant().isBefore(end);
      } catch (DateTimeParseException e) {
        return false;
      }
    }
  }

  /** Copies the maps and the list. */
  public Grader {
    fits = copy(fits);
    refused = copy(refused);
    remarks = List.copyOf(remarks);
  }

  private static <T> Map<Regime, T> copy(Map<Regime, T> map) {
    Map<Regime, T> copy = new EnumMap<>(Regime.class);
    copy.putAll(map);
    return Collections.unmodifiableMap(copy);
  }

  /**
   * Returns the same grader taught further.
   *
   * @param others fits by regime
   * @param more remarks, in words
   * @param from where it then comes from
   */
  public Grader with(Map<Regime, RegimeFit> others, List<String> more, Origin from) {
    List<String> all = new ArrayList<>(remarks);
    all.addAll(more);
    return new Grader(crop, from, others, refused, height, all);
  }

  /**
   * Finds the fit of a regime.
   *
   * @param regime open or closed
   * @return the fit, where there is one
   */
  public Optional<RegimeFit> fit(Regime regime) {
    return Optional.ofNullable(fits.get(regime));
  }

  /**
   * Tells a plant's weight.
   *
   * @param regime whether its outline is its own
   * @param traits of the plant
   * @return the prediction; nothing where the regime has no fit, a size is not known, or the
   *     variety was not weighed
   */
  public Optional<Prediction> predict(Regime regime, Traits traits) {
    return fit(regime).flatMap(fit -> fit.predict(traits));
  }
}
