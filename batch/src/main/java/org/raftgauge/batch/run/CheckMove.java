// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;

/**
 * Checks that what a photo shows can be another raft.
 *
 * @param farm the book
 * @param photo as measured
 */
record CheckMove(Farm farm, PhotoMeasure photo) {

  /** Returns the raft, as measured, that is moved; empty where nothing told it. */
  String from(Optional<String> asked, String to) throws InputException {
    List<String> rafts = photo.rafts().stream().map(r -> r.raft().orElse("")).toList();
    if (photo.takenAt().isEmpty() || rafts.isEmpty()) {
      throw wrong("shows no raft at a known time", "take the photo again");
    }
    String from = asked.orElse(rafts.get(0));
    boolean open = asked.isEmpty() && rafts.size() > 1;
    if (open || rafts.stream().filter(from::equals).count() != 1) {
      throw wrong(
          "shows " + String.join(", ", rafts.stream().map(CheckMove::shown).toList()),
          "say which one is meant by --raft");
    }
    if (rafts.contains(to)) {
      throw wrong("shows raft " + to + " already", "exclude the photo, or move that raft first");
    }
    RaftMeasure raft =
        photo.rafts().stream().filter(r -> r.raft().orElse("").equals(from)).findFirst().get();
    checkPlanting(raft, to);
    return from;
  }

  private void checkPlanting(RaftMeasure raft, String to) throws InputException {
    LocalDate evening = farm.evening(photo.takenAt().orElseThrow());
    List<Planting> plantings = farm.plantingsOn(to, evening);
    if (plantings.isEmpty()) {
      TreeSet<String> known = new TreeSet<>(farm.expectedRafts(evening));
      throw wrong(
          "cannot show raft " + to + ": it has no planting on " + evening,
          NearestSpelling.remedy(to, List.copyOf(known)));
    }
    if (plantings.stream().noneMatch(p -> p.layout().equals(raft.layout()))) {
      throw wrong(
          "was measured as a board of layout "
              + raft.layout()
              + ", and raft "
              + to
              + " has layout "
              + plantings.get(0).layout(),
          "name the raft in manifest.csv and run again, so that it is measured anew");
    }
  }

  private static String shown(String raft) {
    return raft.isEmpty() ? "an unnamed raft" : "raft " + raft;
  }

  private InputException wrong(String found, String remedy) {
    return AmendHistory.wrong(photo.photo(), found, remedy);
  }
}
