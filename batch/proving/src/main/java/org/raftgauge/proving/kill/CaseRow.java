// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

/**
 * A case and what came of it.
 *
 * @param number its number, from 0
 * @param kind what was done
 * @param start from which state
 * @param hit where it struck
 * @param outcome what came of it
 */
record CaseRow(int number, String kind, String start, String hit, Outcome outcome) {
  static final String HEADER = "number,kind,start,hit,lost,doubled,corrupt,wrong";

  String line() {
    return String.join(
        ",",
        "" + number,
        kind,
        start,
        hit.replace(',', ';'),
        "" + outcome.lost(),
        "" + outcome.doubled(),
        "" + outcome.corrupt(),
        outcome.wrong());
  }

  static CaseRow parse(String line) {
    String[] cells = line.split(",", 8);
    return new CaseRow(
        Integer.parseInt(cells[0]),
        cells[1],
        cells[2],
        cells[3],
        new Outcome(
            Integer.parseInt(cells[4]),
            Integer.parseInt(cells[5]),
            Integer.parseInt(cells[6]),
            cells[7]));
  }
}
