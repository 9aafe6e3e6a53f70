// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;

/**
 * What is said of a site, raft, pond or station on an evening, with its evidence.
 *
 * @param scope what it speaks of
 * @param place where that is
 * @param verdict what is said
 * @param also further findings
 * @param share how it stands to what is expected; absent where nothing is expected or measured
 * @param change how it changes; absent on the first evening
 * @param pattern how the departure spreads
 * @param evidence why, in a sentence
 */
public record Judged(
    Scope scope,
    Place place,
    Verdict verdict,
    List<Verdict> also,
    Optional<Share> share,
    Optional<Change> change,
    Pattern pattern,
    String evidence) {

  private static final SiteId FIRST = new SiteId(0, 0);

  /** The stable order of rows: stations, ponds, rafts, sites, each by name. */
  public static final Comparator<Judged> ORDER =
      Comparator.comparing(Judged::scope)
          .thenComparing(j -> j.place().station())
          .thenComparing(j -> j.place().pond())
          .thenComparing(j -> j.place().raft())
          .thenComparing(j -> j.place().site(), Comparator.comparing(s -> s.orElse(FIRST)))
          .thenComparing(j -> j.place().plant());

  /** Copies the list. */
  public Judged {
    also = List.copyOf(also);
  }

  /** What a row speaks of. */
  public enum Scope {
    /** A station. */
    STATION,
    /** A pond. */
    POND,
    /** A raft. */
    RAFT,
    /** A site of a raft. */
    SITE;

    /** Returns the word as written in reports. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Where.
   *
   * @param station the station; empty for a pond
   * @param pond the pond; empty for a station
   * @param raft the raft; empty for ponds and stations
   * @param site the site; absent but for sites
   * @param plant the plant; empty but for sites
   * @param crop the crop; empty for ponds and stations
   * @param takenAt when the photo was taken; absent for ponds and stations
   * @param ageDays days on the clock of its series; absent for ponds and stations
   */
  public record Place(
      String station,
      String pond,
      String raft,
      Optional<SiteId> site,
      String plant,
      String crop,
      Optional<OffsetDateTime> takenAt,
      OptionalDouble ageDays) {

    static Place ofPond(String pond) {
      return group("", pond);
    }

    static Place ofStation(String station) {
      return group(station, "");
    }

    private static Place group(String station, String pond) {
      return new Place(
          station, pond, "", Optional.empty(), "", "", Optional.empty(), OptionalDouble.empty());
    }
  }

  /**
   * How it stands to what is expected. Of rafts and ponds areas are the median plant's.
   *
   * @param areaCm2 measured, cm2
   * @param expectedAreaCm2 median of healthy plants of its age, cm2
   * @param shareOfExpected the believed true share, from the whole series
   * @param lo95 lower end of its 95 % interval
   * @param hi95 upper end
   * @param daysBehind the time shift that carries the expected onto it; below 0 ahead; absent where
   *     the reference hardly grows
   * @param probability of a share under the crop's limit
   * @param z ln(share) over the spread of healthy plants
   * @param basis what the expected rests on
   * @param laggingFrom the lowest limit, as a share of the expected, by which it would be called
   *     lagging tonight
   */
  public record Share(
      double areaCm2,
      double expectedAreaCm2,
      double shareOfExpected,
      double lo95,
      double hi95,
      OptionalDouble daysBehind,
      double probability,
      double z,
      Basis basis,
      double laggingFrom) {}

  /**
   * How it changes.
   *
   * @param innovation observed minus forecast, in standard deviations, less what the evening's
   *     plants have in common (weather)
   * @param ewma of the innovations, weight 0.2
   * @param ratePerDay its own growth rate of ln(area)
   * @param expectedRatePerDay the reference's
   * @param pValue of the innovation, two-sided
   * @param qValue of it among all plants of the evening (Benjamini and Hochberg)
   */
  public record Change(
      double innovation,
      double ewma,
      double ratePerDay,
      double expectedRatePerDay,
      double pValue,
      double qValue) {}
}
