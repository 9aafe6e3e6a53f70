// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.station.CheckStation;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationFault;

/** Scores what the check says of seasons with a fault. */
final class ScoreFaults {

  /** Rafts with less leaf are seedlings on dark plugs: at this size of photo unsteady anyhow. */
  private static final double SEEDLINGS_CM2 = 360;

  private ScoreFaults() {}

  /**
   * What came of one fault.
   *
   * @param fault which
   * @param cases stations that had it
   * @param delays photos until it was said, one a case in which it was; 1 is the first photo
   * @param signs how often each sign was the one that said it, most evenings of all cases
   * @param photos photos with the fault
   * @param held those of which no raft was measured: held by the check or by the photo's own pose
   * @param offFractions for each raft that was measured, seedlings left out, area of the sites
   *     measured on both photos over that of the same evening without the fault, less 1
   */
  record Score(
      Fault fault,
      int cases,
      List<Integer> delays,
      Map<String, Integer> signs,
      int photos,
      int held,
      List<Double> offFractions) {}

  /**
   * A station that has a fault.
   *
   * @param evenings as the station check sees them, the faulty ones last
   * @param onset index of the first faulty one
   * @param photos the photos of the faulty evenings, in order
   * @param without the photos of the same evenings without the fault
   */
  record Case(
      List<StationEvening> evenings,
      int onset,
      List<PhotoMeasure> photos,
      List<PhotoMeasure> without) {}

  /** Scores a fault over stations. */
  static Score of(Fault fault, List<Season> seasons) throws IOException {
    List<Case> cases = new ArrayList<>();
    for (Season season : seasons) {
      cases.add(season.with(fault));
    }
    return ofCases(fault, cases);
  }

  /** Scores a fault over stations that have it. */
  static Score ofCases(Fault fault, List<Case> cases) {
    Score score =
        new Score(fault, cases.size(), new ArrayList<>(), new TreeMap<>(), 0, 0, new ArrayList<>());
    int photos = 0;
    int held = 0;
    for (Case each : cases) {
      var said = CheckStation.byEvening(each.evenings);
      delay(each.onset, each.evenings, said).ifPresent(d -> score.delays().add((int) d));
      for (int i = 0; i < each.photos.size(); i++) {
        List<StationFault> faults = said.get(each.evenings.get(each.onset + i).evening());
        faults.forEach(f -> score.signs().merge(f.sign().words(), 1, Integer::sum));
        boolean whole = faults.stream().anyMatch(StationFault::holds);
        int measured = off(each.photos.get(i), each.without.get(i), score.offFractions());
        photos++;
        held += whole || measured == 0 ? 1 : 0;
      }
    }
    return new Score(
        fault, score.cases(), score.delays(), score.signs(), photos, held, score.offFractions());
  }

  private static OptionalDouble delay(
      int onset, List<StationEvening> evenings, NavigableMap<LocalDate, List<StationFault>> said) {
    for (int i = onset; i < evenings.size(); i++) {
      if (!said.get(evenings.get(i).evening()).isEmpty()) {
        return OptionalDouble.of(i - onset + 1.0);
      }
    }
    return OptionalDouble.empty();
  }

  /** Adds how far each raft's area is off; returns how many rafts were measured. */
  private static int off(PhotoMeasure photo, PhotoMeasure without, List<Double> into) {
    int measured = 0;
    for (int i = 0; i < Math.min(photo.rafts().size(), without.rafts().size()); i++) {
      double now = 0;
      double then = 0;
      for (int s = 0; s < photo.rafts().get(i).sites().size(); s++) {
        OptionalDouble a = photo.rafts().get(i).sites().get(s).visibleAreaCm2();
        OptionalDouble b = without.rafts().get(i).sites().get(s).visibleAreaCm2();
        now += a.isPresent() && b.isPresent() ? a.getAsDouble() : 0;
        then += a.isPresent() && b.isPresent() ? b.getAsDouble() : 0;
      }
      measured += then > 0 ? 1 : 0;
      if (then > SEEDLINGS_CM2) {
        into.add(now / then - 1);
      }
    }
    return measured;
  }
}
