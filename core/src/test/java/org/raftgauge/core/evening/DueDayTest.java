// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DueDayTest {
  private static final LocalDate TOMORROW = LocalDate.of(2026, 4, 17);

  private static Task task(Task.Action action, String berth, LocalDate by) {
    return new Task(
        action,
        2,
        new Task.Where("", "P1", berth, "R" + berth, List.of()),
        "Why.",
        Optional.ofNullable(by),
        action + "/R" + berth + "/2026-04-01");
  }

  @Test
  void daysComeInOrderWhatIsLateTomorrowAndWhatHasNoDayLast() {
    List<Task> list =
        List.of(
            task(Task.Action.INSPECT, "1", TOMORROW),
            task(Task.Action.HARVEST, "2", TOMORROW.minusDays(4)),
            task(Task.Action.HARVEST, "3", TOMORROW.plusDays(2)),
            task(Task.Action.RE_SPACE, "4", null),
            task(Task.Action.WEIGH, "5", TOMORROW));
    List<DueDay> due = DueDay.of(list, TOMORROW);
    assertEquals(
        List.of(Optional.of(TOMORROW), Optional.of(TOMORROW.plusDays(2)), Optional.empty()),
        due.stream().map(DueDay::day).toList());
    assertEquals(
        List.of("R1", "R2", "R5"),
        due.get(0).groups().stream().map(g -> g.first().where().raft()).toList());
  }

  @Test
  void aRaftIsWeighedBeforeItIsHarvestedOnThatDay() {
    List<Task> list =
        List.of(
            task(Task.Action.HARVEST, "1", TOMORROW),
            task(Task.Action.HARVEST, "2", TOMORROW),
            task(Task.Action.RE_SPACE, "3", TOMORROW),
            task(Task.Action.WEIGH, "2", TOMORROW),
            task(Task.Action.WEIGH, "4", TOMORROW));
    assertEquals(
        List.of("HARVEST R1", "WEIGH R2", "HARVEST R2", "RE_SPACE R3", "WEIGH R4"),
        DueDay.of(list, TOMORROW).get(0).groups().stream()
            .map(g -> g.first().action() + " " + g.first().where().raft())
            .toList());
  }

  @Test
  void worklistFollowsTheBerthsByTheirNumbers() {
    List<Task> walked =
        List.of("10", "", "9", "b", "a").stream()
            .map(berth -> task(Task.Action.INSPECT, berth, TOMORROW))
            .sorted(Task.ORDER)
            .toList();
    assertEquals(
        List.of("9", "10", "a", "b", ""), walked.stream().map(t -> t.where().berth()).toList());
  }
}
