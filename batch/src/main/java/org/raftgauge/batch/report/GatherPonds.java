// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.WalkingOrder;
import org.raftgauge.core.track.Judged;

/** Gathers the berth plans: every raft that stands in a pond tonight or was seen in it. */
final class GatherPonds {
  /** By what was said of the pond, then by its sites to look at; ponds not seen come last. */
  private static final Comparator<ReportModel.Pond> WORST_FIRST =
      Comparator.comparing((ReportModel.Pond p) -> p.seen() == 0)
          .thenComparing(p -> -p.mark().weight())
          .thenComparing(p -> -p.toLookAt())
          .thenComparing(ReportModel.Pond::name);

  private final Gathered all;
  private final Map<String, RaftSheet> sheets = new HashMap<>();

  GatherPonds(Gathered all, List<RaftSheet> rafts) {
    this.all = all;
    rafts.forEach(raft -> sheets.put(raft.head().raft(), raft));
  }

  List<ReportModel.Pond> ponds() {
    if (all.tonight().isEmpty()) {
      return List.of();
    }
    Map<String, List<ReportModel.Berth>> ponds = new TreeMap<>();
    for (String raft : all.book().expectedRafts(all.tonight().get())) {
      List<Planting> plantings = all.book().plantingsOn(raft, all.tonight().get());
      if (!plantings.isEmpty()) {
        ponds
            .computeIfAbsent(plantings.get(0).pond(), p -> new ArrayList<>())
            .add(berth(raft, plantings));
      }
    }
    List<ReportModel.Pond> all = new ArrayList<>();
    ponds.forEach((name, berths) -> all.add(pond(name, berths)));
    all.sort(WORST_FIRST);
    return all;
  }

  private ReportModel.Pond pond(String name, List<ReportModel.Berth> berths) {
    berths.sort(
        Comparator.comparing(ReportModel.Berth::berth, WalkingOrder.berths())
            .thenComparing(ReportModel.Berth::raft));
    Optional<Judged> judged = all.verdicts().pond(all.tonight().orElseThrow(), name);
    return new ReportModel.Pond(
        name,
        Texts.anchor("pond-", name),
        judged.map(j -> Mark.of(j.verdict())).orElse(Mark.NONE),
        judged.flatMap(Judged::share).map(s -> Texts.percent(s.shareOfExpected())).orElse(""),
        judged.map(Judged::evidence).orElse(""),
        berths);
  }

  private ReportModel.Berth berth(String raft, List<Planting> plantings) {
    Optional<RaftSheet.Head> head = Optional.ofNullable(sheets.get(raft)).map(RaftSheet::head);
    return new ReportModel.Berth(
        plantings.get(0).berth(),
        raft,
        head.map(RaftSheet.Head::anchor).orElse(""),
        String.join(", ", plantings.stream().map(Planting::crop).distinct().sorted().toList()),
        head.map(RaftSheet.Head::mark).orElse(Mark.NONE),
        head.map(RaftSheet.Head::worst).orElse(Mark.NONE),
        head.map(RaftSheet.Head::toLookAt).orElse(0),
        head.map(RaftSheet.Head::tonight).orElse(false));
  }
}
