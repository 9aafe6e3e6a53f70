// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.forecast;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.batch.grade.PickBook;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.evening.WeighTask;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderHealth;
import org.raftgauge.core.history.SiteLook;

/** Makes worklist rows of the plants to weigh where a grader is old or in doubt. */
final class WeighTasks {
  /** Plants that tell a bias of 5 % of plants that scatter by 10 %; a working value. */
  private static final int PLANTS = 8;

  /** Share of the age of harvest from which plants are worth weighing, as on the worklist. */
  private static final double GROWN = 0.6;

  private final CropBook book;
  private final List<SiteLook> looks;
  private final LocalDate evening;

  WeighTasks(CropBook book, List<SiteLook> looks, LocalDate evening) {
    this.book = book;
    this.looks = looks;
    this.evening = evening;
  }

  /** Makes a row for each raft on which plants were picked. */
  List<Task> of(List<GraderHealth> health, Map<String, Grader> graders) {
    Map<String, GraderHealth> wanting = new TreeMap<>();
    health.stream()
        .filter(GraderHealth::wantsWeighings)
        .forEach(h -> wanting.putIfAbsent(h.crop(), h));
    List<Task> tasks = new ArrayList<>();
    wanting.forEach((crop, why) -> tasks.addAll(tasks(why, graders.get(crop))));
    return tasks;
  }

  private List<Task> tasks(GraderHealth why, Grader grader) {
    Set<String> grown =
        book.expectedRafts(evening).stream()
            .filter(r -> book.plantingsOn(r, evening).stream().anyMatch(p -> grown(p, why.crop())))
            .collect(Collectors.toSet());
    List<SiteLook> near = looks.stream().filter(l -> grown.contains(l.raft())).toList();
    OffsetDateTime at =
        book.farmDay().start(evening.plusDays(1)).atZone(book.zone()).toOffsetDateTime();
    PickBook.Request request =
        new PickBook.Request(
            Path.of(""), why.crop(), PLANTS, why.lastWeighed().toEpochDay(), at, Path.of(""));
    Map<String, List<PickBook.Chosen>> rafts =
        PickBook.choose(book, near, Optional.of(grader), request).stream()
            .collect(
                Collectors.groupingBy(
                    c -> c.planting().raft(), LinkedHashMap::new, Collectors.toList()));
    return rafts.values().stream().map(chosen -> task(why, chosen)).toList();
  }

  private boolean grown(Planting planting, String crop) {
    return planting.crop().equals(crop)
        && book.crop(planting)
            .flatMap(c -> c.harvest())
            .filter(
                h ->
                    planting
                        .transplantedOn()
                        .filter(
                            d -> !d.plusDays((long) (GROWN * h.windowFromDat())).isAfter(evening))
                        .isPresent())
            .isPresent();
  }

  private Task task(GraderHealth why, List<PickBook.Chosen> chosen) {
    Planting planting = chosen.get(0).planting();
    List<SiteId> sites = chosen.stream().map(c -> c.pick().candidate().site()).sorted().toList();
    String item = "weigh-" + why.crop() + "/" + planting.raft() + "/" + planting.startsOn();
    return new Task(
        Task.Action.WEIGH,
        3,
        new Task.Where("", planting.pond(), planting.berth(), planting.raft(), sites),
        "How areas of "
            + why.crop()
            + " become weights (its grader) is to be checked: "
            + why.why()
            + ". "
            + WeighTask.HOW,
        Optional.of(WeighTask.by(planting.harvestBy(), evening)),
        item);
  }
}
