// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.fuzz;

import java.util.List;
import org.raftgauge.core.problem.Problem;

/** What must hold of every problem, whatever was read. */
final class Check {

  private Check() {}

  static void hold(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError(what);
    }
  }

  /** Each problem has its three parts and shows on one line. */
  static void problems(List<Problem> problems) {
    for (Problem problem : problems) {
      hold(!problem.place().isBlank(), "a problem without a place");
      hold(!problem.found().isBlank(), "a problem without a finding");
      hold(!problem.remedy().isBlank(), "a problem without a remedy");
      hold(problem.toString().lines().count() == 1, "a problem over several lines");
      hold(problem.toString().chars().noneMatch(Character::isISOControl), "a control character");
    }
  }
}
