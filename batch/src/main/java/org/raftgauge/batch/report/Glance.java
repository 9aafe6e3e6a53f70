// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says in a few sentences what to know first. What was marked on earlier evenings is said apart:
 * tomorrow's list is of this evening's photos.
 */
record Glance(Gathered all, List<RaftSheet> rafts, List<ReportModel.Pond> ponds) {
  /** Rafts that a sentence names; the others are counted. */
  private static final int MOST_NAMED = 6;

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    if (all.tonight().isPresent()) {
      lines.addAll(photographed());
      unplanted(all.tonight().get()).ifPresent(lines::add);
    }
    lines.addAll(sites());
    worstPond().ifPresent(lines::add);
    return lines;
  }

  private List<String> photographed() {
    int tonight = (int) rafts.stream().filter(r -> r.head().tonight()).count();
    long ended =
        rafts.stream()
            .map(RaftSheet::head)
            .filter(head -> head.mark() == Mark.ENDED && !head.tonight())
            .count();
    int missing = all.input().run().summary().notPhotographed().size();
    String also =
        tonight == rafts.size()
            ? ""
            : ", "
                + (rafts.size() - tonight)
                + " on evenings before"
                + (ended > 0 ? " (" + ended + " of them ended since)" : "");
    return List.of(
        Texts.count(tonight, "raft") + " photographed this evening" + also + ".",
        missing == 0
            ? "Every expected raft was photographed."
            : Texts.count(missing, "raft") + " expected and not photographed.");
  }

  /** Names the rafts of this evening's photos that stand in no planting: nothing judges them. */
  private Optional<String> unplanted(LocalDate evening) {
    List<String> names =
        rafts.stream()
            .map(RaftSheet::head)
            .filter(head -> head.tonight() && head.mark() != Mark.ENDED)
            .map(RaftSheet.Head::raft)
            .filter(raft -> all.book().plantingsOn(raft, evening).isEmpty())
            .toList();
    if (names.isEmpty()) {
      return Optional.empty();
    }
    int more = names.size() - MOST_NAMED;
    return Optional.of(
        Texts.count(names.size(), "raft")
            + (names.size() == 1 ? " has" : " have")
            + " no planting in the book and cannot be judged: "
            + String.join(", ", names.subList(0, Math.min(MOST_NAMED, names.size())))
            + (more > 0 ? " and " + more + " more." : "."));
  }

  private List<String> sites() {
    List<RaftSheet.Head> marked =
        rafts.stream().map(RaftSheet::head).filter(head -> head.toLookAt() > 0).toList();
    List<String> lines = new ArrayList<>();
    List<RaftSheet.Head> now = marked.stream().filter(RaftSheet.Head::tonight).toList();
    if (!now.isEmpty()) {
      lines.add(
          Texts.count(sites(now), "site")
              + " to look at, on "
              + Texts.count(now.size(), "raft")
              + ".");
    }
    List<RaftSheet.Head> before = marked.stream().filter(head -> !head.tonight()).toList();
    if (!before.isEmpty()) {
      lines.add(
          Texts.count(sites(before), "site")
              + " found amiss on evenings before, on "
              + Texts.count(before.size(), "raft")
              + " not photographed since.");
    }
    return lines;
  }

  private static int sites(List<RaftSheet.Head> heads) {
    return heads.stream().mapToInt(RaftSheet.Head::toLookAt).sum();
  }

  /** Names the pond that stands worst, where several were seen and it has something. */
  private Optional<String> worstPond() {
    return ponds.stream()
        .findFirst()
        .filter(pond -> ponds.stream().filter(p -> p.seen() > 0).count() > 1)
        .filter(pond -> pond.mark().weight() > 1 || pond.toLookAt() > 0)
        .map(
            pond ->
                (ponds.stream().allMatch(p -> p.seen() > 0)
                        ? "Worst pond: "
                        : "Worst of the ponds photographed: ")
                    + pond.name()
                    + " ("
                    + pond.mark().word()
                    + (pond.toLookAt() > 0
                        ? ", " + Texts.count(pond.toLookAt(), "site") + " to look at"
                        : "")
                    + ").");
  }
}
