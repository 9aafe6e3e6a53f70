// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Writes the page of the campaign's figures. */
final class FaultsPage {

  private FaultsPage() {}

  static String of(Campaign.Asked asked, List<CaseRow> rows) {
    StringBuilder page = new StringBuilder();
    long kills = rows.stream().filter(FaultsPage::killed).count();
    page.append(
        String.format(
            Locale.ROOT,
            "# Faults%n%nMade by `batch/proving/prove faults`; %s, seed %d.%n%nRuns over %d small"
                + " photos (%d boards, %d evenings) are disturbed, and each is followed by a plain"
                + " run in the same book. After it the history must pass its full check and hold"
                + " every photo, raft and site row exactly as after a run that nothing disturbed"
                + " (lost, doubled: rows missing or too many; corrupt: rows or tables that say"
                + " something else), the results must be whole with the same tables, and nothing"
                + " may be left lying beside them. Right after each fault, what stands in the place"
                + " of the results must be all of the results before, or all of the new ones, or"
                + " nothing (\"wrong\" counts those that broke that, or failed otherwise). Most"
                + " cases start from a book that knows all but the last three evenings and has their"
                + " results, so that six photos are measured; every twentieth kill starts from a"
                + " book that knows nothing and measures all %d. All measuring is real.%n%n",
            asked.stamp(),
            asked.seed(),
            SmallPond.BOARDS * SmallPond.EVENINGS,
            SmallPond.BOARDS,
            SmallPond.EVENINGS,
            SmallPond.BOARDS * SmallPond.EVENINGS));
    if (rows.size() < Campaign.cases(asked)) {
      page.append(
          String.format(
              Locale.ROOT,
              "**This page is of %d of %d cases so far**; the same call goes on with the rest.%n%n",
              rows.size(),
              Campaign.cases(asked)));
    }
    page.append("| what was done | cases | lost | doubled | corrupt | wrong |\n");
    page.append("| --- | ---: | ---: | ---: | ---: | ---: |\n");
    for (Kills.When when : Kills.When.values()) {
      page.append(
          row("kill -9 " + when.words(), rows, r -> killed(r) && r.kind().equals(when.name())));
    }
    page.append(row("all kills", rows, FaultsPage::killed));
    page.append(row("disk full, run stopped", rows, r -> disk(r) && r.hit().contains("stopped")));
    page.append(row("disk nearly full, run ended", rows, r -> disk(r) && r.hit().contains("ran")));
    rows.stream()
        .filter(r -> r.kind().equals("LOCK"))
        .map(CaseRow::hit)
        .distinct()
        .forEach(
            hit ->
                page.append(row(hit, rows, r -> r.kind().equals("LOCK") && r.hit().equals(hit))));
    page.append(
        String.format(
            Locale.ROOT,
            "%n## Where the %d kills struck%n%nThe last step that the run came to before it was"
                + " killed; counted by name. Steps are named in `batch.store.Step`.%n%n",
            kills));
    page.append("| before | kills |\n| --- | ---: |\n");
    Map<String, Long> hits =
        rows.stream()
            .filter(FaultsPage::killed)
            .collect(
                Collectors.groupingBy(
                    r -> r.hit().replaceAll(":.*", ""), TreeMap::new, Collectors.counting()));
    hits.forEach((step, n) -> page.append("| " + step + " | " + n + " |\n"));
    page.append(bad(rows));
    return page.toString();
  }

  private static String bad(List<CaseRow> rows) {
    List<CaseRow> bad = rows.stream().filter(r -> !r.outcome().good()).toList();
    return bad.isEmpty()
        ? ""
        : "\n## Cases that failed\n\n"
            + bad.stream().map(r -> "- `" + r.line() + "`\n").collect(Collectors.joining());
  }

  private static boolean killed(CaseRow row) {
    return !row.kind().equals("DISK")
        && !row.kind().equals("LOCK")
        && !row.hit().contains("the run has no");
  }

  private static boolean disk(CaseRow row) {
    return row.kind().equals("DISK");
  }

  private static String row(String what, List<CaseRow> rows, Predicate<CaseRow> which) {
    List<Outcome> out = rows.stream().filter(which).map(CaseRow::outcome).toList();
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %d | %d | %d |%n",
        what,
        out.size(),
        out.stream().mapToInt(Outcome::lost).sum(),
        out.stream().mapToInt(Outcome::doubled).sum(),
        out.stream().mapToInt(Outcome::corrupt).sum(),
        out.stream().filter(o -> !o.wrong().isEmpty()).count());
  }
}
