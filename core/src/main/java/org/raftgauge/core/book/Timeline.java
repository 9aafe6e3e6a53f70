// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.raftgauge.core.problem.Findings;

/**
 * Plays steps in the order of time and reports what does not fit together, but for rafts in doubt;
 * a step with one raft in doubt puts its others in doubt too.
 */
final class Timeline {
  private final Findings own = new Findings();
  private final Findings findings;
  private final Rafts rafts;

  Timeline(Findings findings, Rafts rafts) {
    this.findings = findings;
    this.rafts = rafts;
  }

  /**
   * Something that happens.
   *
   * @param at when
   * @param phase order among steps of one instant, lower first
   * @param line its line, which decides last
   * @param rafts the rafts it is about
   * @param action what happens; reports to {@link #findings()}
   */
  record Step(Instant at, int phase, int line, Set<String> rafts, Runnable action) {}

  /** Returns where the steps report to. */
  Findings findings() {
    return own;
  }

  void play(List<Step> steps) {
    List<Step> inOrder = new ArrayList<>(steps);
    inOrder.sort(
        Comparator.comparing(Step::at).thenComparing(Step::phase).thenComparing(Step::line));
    inOrder.forEach(this::play);
  }

  private void play(Step step) {
    int before = own.list().size();
    step.action().run();
    if (step.rafts().stream().anyMatch(rafts::isDoubtful)) {
      rafts.doubt(step.rafts());
    } else {
      findings.addAll(own.list().subList(before, own.list().size()));
    }
  }
}
