// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

/**
 * What came of a case.
 *
 * @param lost rows of the history that are missing
 * @param doubled rows too many
 * @param corrupt rows or tables that say something else than undisturbed
 * @param wrong what else went wrong, or empty
 */
record Outcome(int lost, int doubled, int corrupt, String wrong) {

  static Outcome failed(String why) {
    return new Outcome(0, 0, 0, why.replace('\n', ' ').replace(',', ';'));
  }

  boolean good() {
    return lost == 0 && doubled == 0 && corrupt == 0 && wrong.isEmpty();
  }
}
