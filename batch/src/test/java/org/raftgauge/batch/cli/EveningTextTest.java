// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.Task;

class EveningTextTest {
  private static Task task(Task.Action action, String raft) {
    Task.Where where = new Task.Where("", "N", "", raft, List.<SiteId>of());
    return new Task(action, 1, where, "Why.", Optional.of(LocalDate.of(2027, 4, 2)), raft);
  }

  private static List<String> said(List<Task> tasks) {
    return EveningText.lines(
            new EveningResult(
                LocalDate.of(2027, 4, 1),
                List.of(),
                List.of(),
                tasks,
                List.of(),
                List.of(),
                List.of()))
        .stream()
        .skip(2)
        .toList();
  }

  @Test
  void manyRaftsThatNobodyPhotographedComeAsOneLine() {
    List<Task> tasks = new ArrayList<>();
    for (int i = 1; i <= 8; i++) {
      tasks.add(task(Task.Action.PHOTOGRAPH_AT_ALL, "R" + i));
    }
    tasks.add(task(Task.Action.INSPECT, "R9"));
    assertEquals(
        List.of(
            "  Photograph 8 rafts that were expected and not seen: R1, R2, R3, R4, R5, R6, ...",
            "  Inspect raft R9 (pond N) by 2027-04-02. Why."),
        said(tasks));
  }

  @Test
  void twoAreSaidEach() {
    List<Task> tasks =
        List.of(
            task(Task.Action.PHOTOGRAPH_AT_ALL, "R1"), task(Task.Action.PHOTOGRAPH_AT_ALL, "R2"));
    assertEquals(
        List.of(
            "  Photograph raft R1 (pond N) by 2027-04-02. Why.",
            "  Photograph raft R2 (pond N) by 2027-04-02. Why."),
        said(tasks));
  }
}
