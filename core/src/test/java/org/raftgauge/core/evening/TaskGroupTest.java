// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TaskGroupTest {

  private static Task task(Task.Action action, String pond, String raft) {
    return new Task(
        action,
        1,
        new Task.Where("", pond, "", raft, List.of()),
        "why",
        Optional.empty(),
        action + "/" + raft);
  }

  private static Task unseen(String pond, String raft) {
    return task(Task.Action.PHOTOGRAPH_AT_ALL, pond, raft);
  }

  @Test
  void threeUnseenRaftsOfAPondAreOneAndTwoAreTwo() {
    List<Task> list =
        List.of(
            unseen("N", "a"),
            unseen("N", "b"),
            unseen("S", "c"),
            unseen("N", "d"),
            unseen("S", "e"),
            task(Task.Action.INSPECT, "N", "f"));
    List<TaskGroup> groups = TaskGroup.of(list);
    assertEquals(
        List.of("a b d", "c", "e", "f"),
        groups.stream()
            .map(g -> String.join(" ", g.tasks().stream().map(t -> t.where().raft()).toList()))
            .toList());
    assertTrue(groups.get(0).isSeveral());
    assertFalse(groups.get(1).isSeveral());
  }

  @Test
  void noTaskIsLostNorOtherActionsGrouped() {
    List<Task> list =
        List.of(
            task(Task.Action.INSPECT, "N", "a"),
            task(Task.Action.INSPECT, "N", "b"),
            task(Task.Action.INSPECT, "N", "c"));
    assertEquals(list, TaskGroup.of(list).stream().map(TaskGroup::first).toList());
    assertThrows(IllegalArgumentException.class, () -> new TaskGroup(List.of()));
  }
}
