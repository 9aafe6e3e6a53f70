// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.evening.Agreement;
import org.raftgauge.core.track.Verdict;

/** Words how verdicts agree with the head grower's calls. */
final class AgreeText {
  private static final int MOST_DIFFERENCES = 20;

  /** Under so many calls that all agree, one in seven that differ may have been missed: 3 / n. */
  private static final int FEW_CALLS = 20;

  private AgreeText() {}

  static List<String> lines(Agreement agreement) {
    List<String> lines = new ArrayList<>();
    long judged = agreement.cases().stream().filter(c -> c.judged().isPresent()).count();
    long agreed = agreement.cases().stream().filter(Agreement.Case::agrees).count();
    lines.add("Calls    " + agreement.cases().size() + ", " + judged + " of them photographed");
    lines.add("Agreed   " + agreed + " of " + judged);
    agreement
        .kappa()
        .ifPresentOrElse(
            k ->
                lines.add(
                    String.format(
                        Locale.ROOT,
                        "Kappa    %.2f (95 %% interval %.2f to %.2f); 1 is full agreement, 0 what"
                            + " chance gives",
                        k.kappa(),
                        k.lo95(),
                        k.hi95())),
            () -> lines.add("Kappa    cannot be told: both used one and the same word, or none"));
    if (judged > 0 && judged < FEW_CALLS) {
      lines.add("         so few calls tell little, however they agree: some twenty an evening do");
    }
    lines.addAll(table(agreement));
    lines.addAll(threshold(agreement));
    lines.addAll(differences(agreement));
    return lines;
  }

  private static List<String> table(Agreement agreement) {
    List<Verdict> used = Arrays.stream(Verdict.values()).filter(v -> isUsed(v, agreement)).toList();
    if (used.isEmpty()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    StringBuilder head = new StringBuilder(cell("grower \\ program"));
    used.forEach(v -> head.append(number(v.word())));
    lines.add(head.toString());
    for (Verdict called : used) {
      StringBuilder line = new StringBuilder(cell(called.word()));
      used.forEach(said -> line.append(number("" + agreement.count(called, said))));
      lines.add(line.toString());
    }
    return lines;
  }

  private static boolean isUsed(Verdict word, Agreement agreement) {
    return agreement.cases().stream()
        .filter(c -> c.judged().isPresent())
        .anyMatch(c -> c.called() == word || c.judged().get().verdict() == word);
  }

  private static String cell(String text) {
    return String.format(Locale.ROOT, "  %-17s", text);
  }

  private static String number(String text) {
    return String.format(Locale.ROOT, "%10s", text);
  }

  private static List<String> threshold(Agreement agreement) {
    return agreement
        .threshold()
        .map(AgreeText::limit)
        .orElse(
            List.of("Limit    calls of lagging and of other sites are needed to tell the best"));
  }

  /** Names another limit only where it agrees on more sites, with what that promises. */
  private static List<String> limit(Agreement.Threshold t) {
    if (t.agreement() <= t.asSet()) {
      return List.of(
          String.format(
              Locale.ROOT,
              "Limit    lagging_share as set in crops.yaml agrees on %.0f %% of %d sites; no other"
                  + " agrees on more",
              100 * t.asSet(),
              t.cases()));
    }
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "Limit    lagging_share %.2f agrees best: on %.0f %% of %d sites; as set in"
                + " crops.yaml %.0f %%",
            t.laggingShare(),
            100 * t.agreement(),
            t.cases(),
            100 * t.asSet()));
    lines.add(
        String.format(
            Locale.ROOT,
            "         cross-validated over %d groups of calls %.0f %%: what a limit"
                + " chosen so would give on new calls%s",
            t.groups(),
            100 * t.crossValidated(),
            t.crossValidated() > t.asSet() ? "" : "; no more than as set, so leave it"));
    return lines;
  }

  private static List<String> differences(Agreement agreement) {
    List<String> lines = new ArrayList<>();
    for (Agreement.Case each : agreement.cases()) {
      if (each.judged().isPresent() && !each.agrees()) {
        lines.add(
            "  "
                + each.call().calledOn()
                + " "
                + each.call().raft()
                + each.call().site().map(s -> " " + s).orElse("")
                + ": grower "
                + each.call().call()
                + ", program "
                + each.judged().get().verdict().word()
                + " ("
                + each.judged().get().evidence()
                + ")");
      }
    }
    if (lines.isEmpty()) {
      return List.of();
    }
    List<String> shown = new ArrayList<>(List.of("Where they differ:"));
    shown.addAll(lines.subList(0, Math.min(MOST_DIFFERENCES, lines.size())));
    if (lines.size() > MOST_DIFFERENCES) {
      shown.add("  ... and " + (lines.size() - MOST_DIFFERENCES) + " more; agree.csv has all");
    }
    return shown;
  }
}
