// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.raftgauge.core.book.Call;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.evening.Agreement.Case;
import org.raftgauge.core.statistics.CohensKappa;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/** Compares the head grower's calls with the verdicts of their evenings. */
public final class CompareCalls {
  private static final double LOWEST_SHARE = 0.6;
  private static final double STEP = 0.01;
  private static final int STEPS = 36;

  private final CropBook book;
  private final Judge judge;

  private CompareCalls(CropBook book, Judge judge) {
    this.book = book;
    this.judge = judge;
  }

  /** Gives the verdicts of an evening, seeing nothing later than the evening. */
  public interface Judge {
    /**
     * Judges; asked once for an evening.
     *
     * @param evening the evening
     * @return the verdicts
     */
    List<Judged> on(LocalDate evening);
  }

  /**
   * Compares.
   *
   * @param book the book with the calls
   * @param judge gives the verdicts of an evening
   * @return how they agree
   */
  public static Agreement of(CropBook book, Judge judge) {
    return new CompareCalls(book, judge).compare();
  }

  private Agreement compare() {
    List<Case> cases = cases();
    Agreement plain = new Agreement(cases, Optional.empty(), Optional.empty());
    return new Agreement(cases, CohensKappa.of(plain.counts()), threshold(cases));
  }

  private List<Case> cases() {
    Map<LocalDate, Map<String, Judged>> evenings = new HashMap<>();
    List<Case> cases = new ArrayList<>();
    List<Call> calls =
        book.diary().calls().stream()
            .sorted(Comparator.comparing(Call::calledOn).thenComparing(Call::line))
            .toList();
    for (Call call : calls) {
      Map<String, Judged> said =
          evenings.computeIfAbsent(call.calledOn(), e -> byPlace(judge.on(e)));
      cases.add(new Case(call, Optional.ofNullable(said.get(place(call)))));
    }
    return cases;
  }

  private static String place(Call call) {
    return call.raft() + call.site().map(s -> "/" + s).orElse("");
  }

  private static Map<String, Judged> byPlace(List<Judged> rows) {
    Map<String, Judged> places = new HashMap<>();
    for (Judged row : rows) {
      if (row.scope() == Judged.Scope.SITE || row.scope() == Judged.Scope.RAFT) {
        String site = row.place().site().map(s -> "/" + s).orElse("");
        places.put(row.place().raft() + site, row);
      }
    }
    return places;
  }

  /** A case with what each limit says of it. */
  private record Tried(String group, boolean asSet, List<Boolean> agrees) {}

  private Optional<Agreement.Threshold> threshold(List<Case> cases) {
    List<Integer> used = new ArrayList<>();
    for (int i = 0; i < cases.size(); i++) {
      if (cases.get(i).call().site().isPresent() && comparable(cases.get(i))) {
        used.add(i);
      }
    }
    boolean both =
        used.stream().map(i -> lags(cases.get(i).called().word())).distinct().count() == 2;
    return both ? Optional.of(best(tried(cases, used))) : Optional.empty();
  }

  private static boolean comparable(Case each) {
    return each.judged().isPresent()
        && comparable(each.called().word())
        && comparable(each.judged().get().verdict().word());
  }

  private static boolean comparable(String word) {
    return List.of("lagging", "stalled", "on-track", "not-told", "ahead", "pale").contains(word);
  }

  private static boolean lags(String word) {
    return word.equals("lagging") || word.equals("stalled");
  }

  private static boolean agrees(Case each) {
    String said = each.judged().map(j -> j.verdict().word()).orElse("");
    return lags(each.called().word()) == lags(said);
  }

  /** Says whether both would say lagging, or both not, by another limit. */
  private static boolean agrees(Case each, double limit) {
    Judged judged = each.judged().orElseThrow();
    boolean stalled =
        judged.verdict() == Verdict.STALLED || judged.also().contains(Verdict.STALLED);
    boolean lags = judged.share().filter(s -> s.laggingFrom() <= limit).isPresent();
    return lags(each.called().word()) == (stalled || lags);
  }

  private List<Tried> tried(List<Case> cases, List<Integer> used) {
    List<Call> calls = used.stream().map(i -> cases.get(i).call()).toList();
    boolean evenings = calls.stream().map(Call::calledOn).distinct().count() > 1;
    boolean rafts = calls.stream().map(Call::raft).distinct().count() > 1;
    List<Tried> tried = new ArrayList<>();
    for (int i : used) {
      Call call = cases.get(i).call();
      String group = evenings ? call.calledOn().toString() : rafts ? call.raft() : place(call);
      Case each = cases.get(i);
      tried.add(
          new Tried(
              group,
              agrees(each),
              IntStream.range(0, STEPS).mapToObj(step -> agrees(each, share(step))).toList()));
    }
    return tried;
  }

  private static double share(int step) {
    return LOWEST_SHARE + STEP * step;
  }

  private static Agreement.Threshold best(List<Tried> tried) {
    Map<String, List<Tried>> groups = new TreeMap<>();
    tried.forEach(t -> groups.computeIfAbsent(t.group(), g -> new ArrayList<>()).add(t));
    int validated = 0;
    for (Map.Entry<String, List<Tried>> group : groups.entrySet()) {
      List<Tried> others = tried.stream().filter(t -> !t.group().equals(group.getKey())).toList();
      validated += agreed(group.getValue(), bestStep(others));
    }
    int step = bestStep(tried);
    double n = tried.size();
    return new Agreement.Threshold(
        share(step),
        agreed(tried, step) / n,
        validated / n,
        tried.stream().filter(Tried::asSet).count() / n,
        tried.size(),
        groups.size());
  }

  /** Returns the limit that agrees most often; of equals the middle one. */
  private static int bestStep(List<Tried> tried) {
    int most = -1;
    List<Integer> best = new ArrayList<>();
    for (int step = 0; step < STEPS; step++) {
      int agreed = agreed(tried, step);
      if (agreed > most) {
        most = agreed;
        best.clear();
      }
      if (agreed == most) {
        best.add(step);
      }
    }
    return best.get((best.size() - 1) / 2);
  }

  private static int agreed(List<Tried> tried, int step) {
    return (int) tried.stream().filter(t -> t.agrees().get(step)).count();
  }
}
