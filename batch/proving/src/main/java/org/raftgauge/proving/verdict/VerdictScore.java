// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What the verdicts on a simulated farm came to. */
public final class VerdictScore {
  private final Map<String, Recall> recalls = new TreeMap<>();
  private final List<String> faults = new ArrayList<>();
  private final Recall closed = new Recall();
  private final Recall stalls = new Recall();
  private int healthyDays;
  private int falseFlags;
  private int notAheadDays;
  private int falseAhead;
  private int rowsOfGroups;
  private int falseGroups;

  /** How many of what must be called were, and how long it took. */
  public static final class Recall {
    private int all;
    private int called;
    private final List<Double> days = new ArrayList<>();

    void add(Optional<Double> daysToCall) {
      all++;
      daysToCall.ifPresent(
          d -> {
            called++;
            days.add(d);
          });
    }

    void add(Recall other) {
      all += other.all;
      called += other.called;
      days.addAll(other.days);
    }

    /** Returns how many there were. */
    public int all() {
      return all;
    }

    /** Returns how many were called in time. */
    public int called() {
      return called;
    }

    /** Returns the share of those called, 0..1; 1 where there were none. */
    public double share() {
      return all == 0 ? 1 : (double) called / all;
    }

    /**
     * Returns a quantile of the days from due to called; 0 where none was called.
     *
     * @param at 0..1
     */
    public double days(double at) {
      List<Double> sorted = days.stream().sorted().toList();
      return sorted.isEmpty() ? 0 : sorted.get((int) Math.round(at * (sorted.size() - 1)));
    }
  }

  Recall recall(String plight) {
    return recalls.computeIfAbsent(plight, p -> new Recall());
  }

  void healthyDay(boolean flagged) {
    healthyDays++;
    falseFlags += flagged ? 1 : 0;
  }

  void notAheadDay(boolean flagged) {
    notAheadDays++;
    falseAhead += flagged ? 1 : 0;
  }

  void group(boolean wrongly) {
    rowsOfGroups++;
    falseGroups += wrongly ? 1 : 0;
  }

  void fault(String words) {
    faults.add(words);
  }

  /** Returns recall by plight and degree. */
  public Map<String, Recall> byPlight() {
    return recalls;
  }

  /** Returns recall of all sites at or under 70 %. */
  public Recall small() {
    Recall sum = new Recall();
    recalls.values().forEach(sum::add);
    return sum;
  }

  /** Returns recall of those of them that were closed when they had to be called. */
  public Recall closed() {
    return closed;
  }

  /** Returns recall of stalls within four days of their onset, whatever their size. */
  public Recall stalls() {
    return stalls;
  }

  /** Returns what was found of the faults of ponds and stations, in words. */
  public List<String> faults() {
    return List.copyOf(faults);
  }

  /** Returns site-days at or over 85 %. */
  public int healthyDays() {
    return healthyDays;
  }

  /** Returns how many of those were called lagging or stalled. */
  public int falseFlags() {
    return falseFlags;
  }

  /** Returns false flags per 1,000 site-days. */
  public double falsePerThousand() {
    return healthyDays == 0 ? 0 : 1000.0 * falseFlags / healthyDays;
  }

  /** Returns site-days at or under 124 %. */
  public int notAheadDays() {
    return notAheadDays;
  }

  /** Returns how many of those were called ahead. */
  public int falseAhead() {
    return falseAhead;
  }

  /** Returns rows of rafts and ponds whose plants stand at 90 % or more in the median. */
  public int soundGroups() {
    return rowsOfGroups;
  }

  /** Returns how many of those were called lagging or given a pattern. */
  public int falseGroups() {
    return falseGroups;
  }
}
