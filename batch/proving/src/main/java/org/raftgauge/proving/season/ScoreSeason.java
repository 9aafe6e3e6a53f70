// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.TrackRules;
import org.raftgauge.core.track.Verdict;

/**
 * Judges every evening of a season with nothing later in sight, and scores the calls by the true
 * size of each site, whatever the cause.
 */
final class ScoreSeason {
  /** A site at or under this share of its healthy cohort's median must be called. */
  static final double MUST = 0.70;

  /** A site at or over this must not. */
  static final double MUST_NOT = 0.85;

  private static final int PHOTO_DAYS = 3;
  private static final int STALL_DAYS = 4;

  private final CropBook book;
  private final List<SeasonSite> sites;
  private final TrackRules rules;
  private final Map<LocalDate, Map<String, Judged>> calls = new TreeMap<>();
  private final Map<LocalDate, Set<String>> groups = new TreeMap<>();

  ScoreSeason(CropBook book, List<SeasonSite> sites, TrackRules rules) {
    this.book = book;
    this.sites = sites;
    this.rules = rules;
  }

  /** Judges all evenings. */
  SeasonScore score() {
    List<SiteLook> looks = new ArrayList<>();
    Map<Integer, List<SeasonSite>> byDay = new TreeMap<>();
    sites.stream()
        .filter(SeasonSite::photographed)
        .forEach(s -> byDay.computeIfAbsent(s.day(), d -> new ArrayList<>()).add(s));
    byDay.forEach(
        (day, seen) -> {
          seen.forEach(s -> looks.add(look(s)));
          judge(SeasonFiles.FIRST.plusDays(day), looks);
        });
    return count();
  }

  private void judge(LocalDate evening, List<SiteLook> looks) {
    Map<String, Judged> said = new HashMap<>();
    Set<String> named = new HashSet<>();
    for (Judged row :
        JudgeEvening.judge(book, CollectSeries.upTo(book, looks, evening), evening, rules)) {
      if (row.scope() == Judged.Scope.SITE) {
        said.put(row.place().raft() + "/" + row.place().site().orElseThrow(), row);
      } else if (row.verdict() != Verdict.ON_TRACK) {
        named.add(
            row.scope().word()
                + " "
                + row.place().station()
                + row.place().pond()
                + row.place().raft());
      }
    }
    calls.put(evening, said);
    groups.put(evening, named);
  }

  static SiteLook look(SeasonSite s) {
    SiteMeasure measure =
        new SiteMeasure(
            s.site(),
            OptionalDouble.of(s.measuredCm2()),
            OptionalDouble.of(s.seCm2()),
            OptionalDouble.of(s.measuredCm2()),
            s.closed(),
            0,
            0,
            1,
            List.of(),
            List.of(),
            1,
            "");
    return new SiteLook(
        s.station() + "-" + s.day(),
        s.station(),
        s.raft(),
        SeasonFiles.FIRST.plusDays(s.day()).atTime(18, 0).atOffset(ZoneOffset.UTC),
        measure);
  }

  private SeasonScore count() {
    SeasonScore score = new SeasonScore();
    Map<String, List<SeasonSite>> bySite = new TreeMap<>();
    for (SeasonSite s : sites) {
      bySite.computeIfAbsent(s.raft() + "/" + s.site(), k -> new ArrayList<>()).add(s);
    }
    bySite.forEach((key, days) -> site(key, days, score));
    groups.forEach((evening, named) -> score.groups.put(evening, named));
    return score;
  }

  private void site(String key, List<SeasonSite> days, SeasonScore score) {
    List<SeasonSite> photographed = days.stream().filter(SeasonSite::photographed).toList();
    int small = 0;
    boolean called = false;
    boolean counted = false;
    boolean closed = false;
    for (SeasonSite s : photographed) {
      Verdict verdict = verdict(key, s);
      boolean slow = verdict == Verdict.LAGGING || verdict == Verdict.STALLED;
      boolean bad = slow || verdict == Verdict.DEAD || verdict == Verdict.EMPTY;
      boolean trulyStalled =
          s.fate().kind() != Fate.Kind.HEALTHY
              && s.fate().kind() != Fate.Kind.LAGS
              && s.dat() > s.fate().onsetDat();
      if (s.trueShare() >= MUST_NOT && !trulyStalled) {
        score.healthyDays++;
        if (slow) {
          score.falseFlags++;
          score.falseWhere.merge(verdict + " " + s.fate().kind(), 1, Integer::sum);
        }
      }
      small = s.trueShare() <= MUST ? small + 1 : 0;
      if (small == 0) {
        called = false;
      }
      if (small > 0 && small <= PHOTO_DAYS) {
        called |= bad;
        closed |= s.closed();
        if ((called || small == PHOTO_DAYS) && !counted) {
          counted = true;
          score.small.merge(s.fate().kind(), 1, Integer::sum);
          if (closed) {
            score.smallClosed++;
          }
          if (called) {
            score.smallCalled.merge(s.fate().kind(), 1, Integer::sum);
          } else {
            score.missed.add(key + " " + s.fate() + " dat " + s.dat() + " share " + s.trueShare());
          }
        }
      }
    }
    stall(key, photographed, score);
  }

  private void stall(String key, List<SeasonSite> photographed, SeasonScore score) {
    Fate fate = photographed.isEmpty() ? null : photographed.get(0).fate();
    if (fate == null || fate.kind() != Fate.Kind.STALLS) {
      return;
    }
    double onset = fate.onsetDat();
    double last = photographed.get(photographed.size() - 1).dat();
    if (last < onset + STALL_DAYS) {
      return;
    }
    score.stalls++;
    for (SeasonSite s : photographed) {
      Verdict verdict = verdict(key, s);
      if (s.dat() > onset
          && s.dat() <= onset + STALL_DAYS + 1
          && s.dat() - onset <= STALL_DAYS + 0.75) {
        if (verdict == Verdict.STALLED || verdict == Verdict.LAGGING) {
          score.stallsCalled++;
          return;
        }
      }
    }
  }

  private Verdict verdict(String key, SeasonSite s) {
    Judged row = calls.getOrDefault(SeasonFiles.FIRST.plusDays(s.day()), Map.of()).get(key);
    return row == null ? Verdict.ON_TRACK : row.verdict();
  }
}
