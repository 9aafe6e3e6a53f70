// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A row of the forecast table.
 *
 * @param scope {@code raft}, {@code pond} or {@code crop}
 * @param place whose
 * @param date the day
 * @param dat days after transplant or after the last cut on it; absent but for rafts
 * @param heads expected to stand
 * @param headsUnder expected under the minimum, where weights and targets are known
 * @param weightG total fresh weight, g, where it can be told
 * @param ready when it is ready; of rafts only
 * @param told what tells the weight
 * @param areaCm2 total projected area by the plants' curves, cm2
 * @param sales in sales units, where weights and targets are known
 * @param warnings what a reader must know, in words
 */
public record ForecastRow(
    String scope,
    Place place,
    LocalDate date,
    OptionalDouble dat,
    double heads,
    OptionalDouble headsUnder,
    Optional<Amount> weightG,
    Ready ready,
    Told told,
    Amount areaCm2,
    Optional<Sales> sales,
    List<String> warnings) {

  /** Copies the warnings. */
  public ForecastRow {
    warnings = List.copyOf(warnings);
  }

  /**
   * Whose row; what a scope does not have is empty.
   *
   * @param raft the raft
   * @param pond the pond
   * @param crop the crop
   * @param lot the lot
   */
  public record Place(String raft, String pond, String crop, String lot) {}

  /**
   * A ready day.
   *
   * @param on as likely before as after
   * @param lo80 a tenth of chances lies before it
   * @param hi80 a tenth of chances lies after it; absent where past the horizon
   */
  public record Ready(Optional<LocalDate> on, Optional<LocalDate> lo80, Optional<LocalDate> hi80) {

    /** Returns no ready day. */
    public static Ready none() {
      return new Ready(Optional.empty(), Optional.empty(), Optional.empty());
    }
  }

  /**
   * What tells the weight.
   *
   * @param grader its name; {@code none} where there is none
   * @param regime {@code open}, {@code closed}, {@code mixed} or empty
   */
  public record Told(String grader, String regime) {}

  /**
   * In sales units.
   *
   * @param weightG after trimming, g
   * @param packs whole packs of it, where the crop is packed by weight
   * @param cutBeforeG weighed at earlier cuts of the same planting, g
   */
  public record Sales(double weightG, OptionalDouble packs, double cutBeforeG) {}
}
