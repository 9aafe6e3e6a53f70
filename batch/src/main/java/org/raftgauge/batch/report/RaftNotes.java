// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.report.RaftRows;

/** Photos that count, on which something of a raft could not be read or had to be mended. */
record RaftNotes(Gathered all) {

  List<ReportModel.PhotoNote> notes() {
    List<ReportModel.PhotoNote> notes = new ArrayList<>();
    for (RaftRows rows : all.input().run().rafts().stream().sorted(RaftRows.ORDER).toList()) {
      boolean said = rows.doubt().isEmpty() && !rows.raft().notes().isEmpty();
      if (said && rows.raft().raft().isPresent()) {
        notes.add(note(rows));
      }
    }
    return notes;
  }

  private ReportModel.PhotoNote note(RaftRows rows) {
    return new ReportModel.PhotoNote(
        rows.photo().photo(),
        "used",
        "raft " + rows.raft().raft().orElseThrow() + ": " + String.join("; ", rows.raft().notes()),
        remedy(rows.raft()),
        all.files().overlay(rows.photo().photo()));
  }

  private static String remedy(RaftMeasure raft) {
    return raft.notes().contains(RaftMeasure.TAG_UNREAD)
        ? "Clean the tag and free it of leaves; print a new one if it stays unread. Until then the"
            + " file name, the manifest or the slot tells the raft."
        : "Look at the overlay: the outlines must lie on the plants and A1 in its corner. If so,"
            + " nothing is to be done.";
  }
}
