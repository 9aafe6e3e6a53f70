// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.Comparator;
import java.util.List;

/**
 * The page as texts ready to be shown; what is not known is an empty text or list. Links are paths
 * below the run folder, not yet escaped.
 *
 * @param evening the latest evening, or empty
 * @param areaUnit the unit of areas
 * @param glance what to know first, a sentence each
 * @param worklist tomorrow's work
 * @param hidden how many rows of it someone marked seen, done or put off, a sentence, or empty
 * @param ponds the ponds, each with its berths
 * @param rafts the rafts, in the order of their ids
 * @param forecast weights to come
 * @param photos photos with something to say
 * @param origin how the numbers came about
 */
public record ReportModel(
    String evening,
    String areaUnit,
    List<String> glance,
    List<Work> worklist,
    String hidden,
    List<Pond> ponds,
    List<RaftSheet> rafts,
    Ahead forecast,
    List<PhotoNote> photos,
    Origin origin) {

  /** Says why there is nothing to do, where there is nothing. */
  public String nothing() {
    if (evening.isEmpty()) {
      return "No evening could be judged: no photo told both its raft and its time.";
    }
    return hidden.isEmpty()
        ? "Nothing to do: every expected raft was photographed, and nothing departs from what is"
            + " expected."
        : "Nothing else to do.";
  }

  /** Says whether the order of the ponds means anything: two or more were photographed. */
  public boolean ranksPonds() {
    return ponds.stream().filter(pond -> pond.seen() > 0).count() > 1;
  }

  /** Returns the heading of the ponds. */
  public String pondsTitle() {
    return ranksPonds() ? "Ponds, the worst first" : "Ponds";
  }

  /**
   * A pond with its berths.
   *
   * @param name the pond; empty for rafts of no pond
   * @param anchor where its berths are on the page
   * @param mark what was said of it as a whole
   * @param share its share of what is expected, percent, or empty
   * @param evidence why
   * @param berths its berths, in order
   */
  public record Pond(
      String name, String anchor, Mark mark, String share, String evidence, List<Berth> berths) {

    /** Copies the list. */
    public Pond {
      berths = List.copyOf(berths);
    }

    /** Returns how many of its rafts were photographed this evening. */
    public int seen() {
      return (int) berths.stream().filter(Berth::seen).count();
    }

    /** Returns how many sites to look at this evening's photos show. */
    public int toLookAt() {
      return berths.stream().filter(Berth::seen).mapToInt(Berth::toLookAt).sum();
    }

    /** Returns how many sites were to look at on rafts that were last seen before this evening. */
    public int toLookAtBefore() {
      return berths.stream().filter(b -> !b.seen()).mapToInt(Berth::toLookAt).sum();
    }

    /** Returns its rafts with sites to look at, or that are not on track, the worst first. */
    public List<Berth> worst() {
      return berths.stream()
          .filter(b -> b.seen() && (b.toLookAt() > 0 || b.mark().weight() > 0))
          .sorted(
              Comparator.comparingInt((Berth b) -> -b.mark().weight())
                  .thenComparingInt(b -> -b.toLookAt())
                  .thenComparing(Berth::raft))
          .toList();
    }
  }

  /**
   * A raft in its berth.
   *
   * @param berth the berth, may be empty
   * @param raft the raft
   * @param anchor where its sheet is; empty where it has none
   * @param crop what grows on it
   * @param mark what was said of it
   * @param worst the most urgent mark among its sites
   * @param toLookAt number of its sites to look at
   * @param seen whether it was photographed on the latest evening
   */
  public record Berth(
      String berth,
      String raft,
      String anchor,
      String crop,
      Mark mark,
      Mark worst,
      int toLookAt,
      boolean seen) {}

  /**
   * A photo with something to say.
   *
   * @param photo its path
   * @param status what became of it
   * @param reason why
   * @param remedy what to do
   * @param overlay its overlay, or empty
   */
  public record PhotoNote(
      String photo, String status, String reason, String remedy, String overlay) {}

  /**
   * How the numbers came about.
   *
   * @param limits the limits of lagging and ahead, in a sentence
   * @param facts names and values
   * @param crops the settings of each crop, names and values
   * @param photos every photo with the hash of its bytes
   */
  public record Origin(String limits, List<Fact> facts, List<Fact> crops, List<Hashed> photos) {}

  /**
   * A name and a value.
   *
   * @param name what
   * @param value how much
   */
  public record Fact(String name, String value) {}

  /**
   * A photo and its hash.
   *
   * @param photo its path
   * @param takenAt when, or empty
   * @param station where, or empty
   * @param status what became of it
   * @param sha256 of its bytes
   */
  public record Hashed(
      String photo, String takenAt, String station, String status, String sha256) {}
}
