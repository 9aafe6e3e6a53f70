// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Pattern;
import org.raftgauge.core.track.TrackRules;
import org.raftgauge.core.track.Verdict;

/**
 * Judges every evening of a simulated farm with nothing later in sight, and scores the calls by the
 * true size of each site, whatever the cause.
 */
public final class ScoreVerdicts {
  /** A site at or under this share of its healthy cohort's median must be called. */
  public static final double MUST = 0.70;

  /** A site at or over this must not. */
  public static final double MUST_NOT = 0.85;

  /**
   * A site at or under this must not be called ahead: as far under the usual limit of 1.35 as 0.85
   * is over that of lagging, 0.78.
   */
  public static final double NOT_AHEAD = 1.24;

  /** A raft or pond whose plants stand at or over this in the median must not be named. */
  public static final double GROUP_MUST_NOT = 0.90;

  private static final Set<Verdict> SLOW = Set.of(Verdict.LAGGING, Verdict.STALLED);
  private static final Set<Verdict> BAD =
      Set.of(Verdict.LAGGING, Verdict.STALLED, Verdict.DEAD, Verdict.EMPTY);
  private static final int PHOTO_DAYS = 3;

  /** Photos are taken at three quarters of the day; the fourth evening after counts. */
  private static final double EVENING = 0.75;

  private static final double STALL_DAYS = 4 + EVENING;

  private final CropBook book;
  private final List<TrueSite> sites;
  private final List<Fault> faults;
  private final Map<LocalDate, Map<String, Verdict>> calls = new HashMap<>();
  private final Map<LocalDate, List<Judged>> groups = new TreeMap<>();
  private final Map<LocalDate, List<TrueSite>> tonight = new HashMap<>();
  private final VerdictScore score = new VerdictScore();

  private ScoreVerdicts(CropBook book, List<TrueSite> sites, List<Fault> faults) {
    this.book = book;
    this.sites = sites;
    this.faults = faults;
  }

  /**
   * Judges and scores.
   *
   * @param book the farm's crop book
   * @param sites every plant on every evening
   * @param faults of ponds and stations
   * @param rules how departures are judged
   * @return the score
   */
  public static VerdictScore score(
      CropBook book, List<TrueSite> sites, List<Fault> faults, TrackRules rules) {
    ScoreVerdicts scorer = new ScoreVerdicts(book, sites, faults);
    scorer.judge(rules);
    Map<String, List<TrueSite>> byPlant = new TreeMap<>();
    sites.stream()
        .filter(s -> s.look().isPresent())
        .forEach(s -> byPlant.computeIfAbsent(s.plant(), p -> new ArrayList<>()).add(s));
    byPlant.values().forEach(scorer::plant);
    faults.forEach(scorer::fault);
    sites.forEach(s -> scorer.tonight.computeIfAbsent(s.evening(), e -> new ArrayList<>()).add(s));
    scorer.soundGroups();
    return scorer.score;
  }

  private void judge(TrackRules rules) {
    Map<LocalDate, List<SiteLook>> evenings = new TreeMap<>();
    for (TrueSite site : sites) {
      site.look()
          .ifPresent(l -> evenings.computeIfAbsent(site.evening(), e -> new ArrayList<>()).add(l));
    }
    List<SiteLook> looks = new ArrayList<>();
    evenings.forEach(
        (evening, fresh) -> {
          looks.addAll(fresh);
          Map<String, Verdict> said = new HashMap<>();
          List<Judged> wholes = new ArrayList<>();
          for (Judged row :
              JudgeEvening.judge(
                  book, CollectSeries.withEnded(book, looks, evening), evening, rules)) {
            row.place()
                .site()
                .ifPresentOrElse(
                    site -> said.put(row.place().raft() + "/" + site, row.verdict()),
                    () -> wholes.add(row));
          }
          calls.put(evening, said);
          groups.put(evening, wholes);
        });
  }

  private Verdict said(TrueSite site) {
    return calls
        .getOrDefault(site.evening(), Map.of())
        .getOrDefault(site.place(), Verdict.ON_TRACK);
  }

  private void plant(List<TrueSite> days) {
    for (TrueSite site : days) {
      boolean anyCallIsRight = site.plight().stops() && site.plight().hasCome(site.dat());
      if (site.trueShare() >= MUST_NOT && !anyCallIsRight) {
        score.healthyDay(SLOW.contains(said(site)));
      }
      if (site.trueShare() <= NOT_AHEAD) {
        score.notAheadDay(said(site) == Verdict.AHEAD);
      }
    }
    small(days);
    if (days.get(0).plight().kind().equals("stalls")) {
      stall(days);
    }
  }

  /** Scores the first time that a plant is at or under 70 % on three photos running. */
  private void small(List<TrueSite> days) {
    int run = 0;
    for (int i = 0; i < days.size(); i++) {
      run = days.get(i).trueShare() <= MUST ? run + 1 : 0;
      if (run == PHOTO_DAYS) {
        due(days.subList(i - PHOTO_DAYS + 1, i + 1));
        return;
      }
    }
  }

  private void due(List<TrueSite> days) {
    TrueSite first = days.get(0);
    Optional<Double> after =
        days.stream()
            .filter(s -> BAD.contains(said(s)))
            .findFirst()
            .map(s -> s.dat() - first.dat());
    String degree = first.plight().degree();
    score.recall(first.plight().kind() + (degree.isEmpty() ? "" : ", " + degree)).add(after);
    if (days.stream().anyMatch(TrueSite::closed)) {
      score.closed().add(after);
    }
  }

  private void stall(List<TrueSite> days) {
    double onset = days.get(0).plight().onsetDat().orElseThrow();
    if (days.get(days.size() - 1).dat() < onset + STALL_DAYS - EVENING) {
      return;
    }
    score
        .stalls()
        .add(
            days.stream()
                .filter(s -> s.dat() > onset && s.dat() <= onset + STALL_DAYS)
                .filter(s -> SLOW.contains(said(s)))
                .findFirst()
                .map(s -> s.dat() - onset));
  }

  private void fault(Fault fault) {
    Judged.Scope scope = fault.what().equals("pond") ? Judged.Scope.POND : Judged.Scope.STATION;
    Optional<LocalDate> named =
        groups.entrySet().stream()
            .filter(e -> e.getValue().stream().anyMatch(row -> names(row, scope, fault)))
            .map(Map.Entry::getKey)
            .findFirst();
    String when =
        named
            .map(day -> ChronoUnit.DAYS.between(fault.from(), day))
            .map(days -> String.format(Locale.ROOT, "named %d days after", days))
            .orElse("not named");
    score.fault(fault.what() + " " + fault.name() + " " + when + blame(fault));
  }

  private static boolean names(Judged row, Judged.Scope scope, Fault fault) {
    boolean slow = scope == Judged.Scope.STATION || SLOW.contains(row.verdict());
    String name = scope == Judged.Scope.POND ? row.place().pond() : row.place().station();
    return row.scope() == scope && slow && name.equals(fault.name());
  }

  /** Says how many healthy sites were blamed for a camera in the week after it failed. */
  private String blame(Fault fault) {
    if (fault.what().equals("pond")) {
      return "";
    }
    long blamed = 0;
    long seen = 0;
    for (TrueSite site : sites) {
      boolean there = site.look().filter(l -> l.station().equals(fault.name())).isPresent();
      long days = ChronoUnit.DAYS.between(fault.from(), site.evening());
      if (there && days >= 0 && days < 7 && site.trueShare() >= MUST_NOT) {
        boolean right = site.plight().stops() && site.plight().hasCome(site.dat());
        seen++;
        blamed += SLOW.contains(said(site)) && !right ? 1 : 0;
      }
    }
    return String.format(
        Locale.ROOT, "; %d of %d healthy site-days there blamed in its first week", blamed, seen);
  }

  /** Counts rafts and ponds that are named, or given a pattern, though their plants are sound. */
  private void soundGroups() {
    boolean slowPond = faults.stream().anyMatch(f -> f.what().equals("pond"));
    if (slowPond) {
      return;
    }
    groups.forEach(
        (evening, rows) -> {
          Map<String, List<Double>> shares = new HashMap<>();
          for (TrueSite site : tonight.getOrDefault(evening, List.of())) {
            String pond =
                book.plantingsOn(site.raft(), evening).stream()
                    .findFirst()
                    .map(Planting::pond)
                    .orElse("");
            for (String group : List.of("raft " + site.raft(), "pond " + pond)) {
              shares.computeIfAbsent(group, g -> new ArrayList<>()).add(site.trueShare());
            }
          }
          rows.forEach(row -> soundGroup(row, shares));
        });
  }

  private void soundGroup(Judged row, Map<String, List<Double>> shares) {
    String name =
        switch (row.scope()) {
          case RAFT -> "raft " + row.place().raft();
          case POND -> "pond " + row.place().pond();
          default -> "";
        };
    List<Double> sorted = shares.getOrDefault(name, List.of()).stream().sorted().toList();
    if (!sorted.isEmpty() && sorted.get(sorted.size() / 2) >= GROUP_MUST_NOT) {
      score.group(SLOW.contains(row.verdict()) || row.pattern() != Pattern.NONE);
    }
  }
}
