// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.calibrate.CalibratePair;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.LensReport;
import org.raftgauge.core.calibrate.TargetSighting;

/** Joins photos of a target that two cameras took at the same moments. */
public final class TargetMoments {

  private TargetMoments() {}

  /** Marks in the names of both cameras' files; either may be empty. */
  public record Marks(String first, String second) {}

  /** What one camera saw, the lens fitted to it, and what is said of that. */
  public record Seen(List<TargetSighting> sightings, LensFit fit, LensReport report) {

    /** Returns the photos that served for the lens. */
    public List<TargetSighting> used() {
      List<String> photos = fit.views().stream().map(v -> v.photo()).toList();
      return sightings.stream().filter(s -> photos.contains(s.photo())).toList();
    }
  }

  /**
   * Joins by name, the marks left out of it; where no name fits and both took as many photos, by
   * order.
   *
   * @param first what the first camera saw
   * @param second what the second camera saw
   * @param marks marks in the names of the files
   * @return the moments of which both photos served for the lenses
   */
  public static List<CalibratePair.Moment> of(Seen first, Seen second, Marks marks) {
    Map<String, TargetSighting> byName = new HashMap<>();
    second.used().forEach(s -> byName.put(bare(s.photo(), marks.second), s));
    List<CalibratePair.Moment> moments = new ArrayList<>();
    for (TargetSighting s : first.used()) {
      Optional.ofNullable(byName.get(bare(s.photo(), marks.first)))
          .ifPresent(other -> moments.add(new CalibratePair.Moment(s, other)));
    }
    boolean asMany = first.sightings.size() == second.sightings.size();
    return moments.isEmpty() && asMany ? byOrder(first, second) : moments;
  }

  /**
   * Says whether two cameras' photos are the same ones.
   *
   * @param moments moments at which both saw the target
   * @return whether at each every point lies at the same place of both photos
   */
  public static boolean samePhotos(List<CalibratePair.Moment> moments) {
    return !moments.isEmpty()
        && moments.stream().allMatch(m -> m.first().points().equals(m.second().points()));
  }

  private static List<CalibratePair.Moment> byOrder(Seen first, Seen second) {
    List<CalibratePair.Moment> moments = new ArrayList<>();
    List<TargetSighting> one = first.used();
    List<TargetSighting> two = second.used();
    for (int i = 0; i < first.sightings.size(); i++) {
      TargetSighting a = first.sightings.get(i);
      TargetSighting b = second.sightings.get(i);
      if (one.contains(a) && two.contains(b)) {
        moments.add(new CalibratePair.Moment(a, b));
      }
    }
    return moments;
  }

  private static String bare(String photo, String mark) {
    return SecondCamera.stem(photo).replace(mark, "");
  }
}
