// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What one photo said of the sites of one raft, as far as it stands together: of very many looks
 * time and raft are then asked for once a photo.
 *
 * @param photo the photo
 * @param raft the raft
 * @param at when it was taken
 * @param looks at its sites, one or more, in their order
 */
record RaftLooks(String photo, String raft, Instant at, List<SiteLook> looks) {
  /** By time, then by photo; the order of looks that have both in common is kept. */
  static final Comparator<RaftLooks> BY_TIME =
      Comparator.comparing(RaftLooks::at).thenComparing(RaftLooks::photo);

  /** Parts looks where photo, time or raft change; nothing is moved. */
  static List<RaftLooks> of(List<SiteLook> looks) {
    List<RaftLooks> rafts = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= looks.size(); i++) {
      if (i == looks.size() || !together(looks.get(from), looks.get(i))) {
        SiteLook first = looks.get(from);
        rafts.add(
            new RaftLooks(
                first.photo(), first.raft(), first.takenAt().toInstant(), looks.subList(from, i)));
        from = i;
      }
    }
    return rafts;
  }

  private static boolean together(SiteLook a, SiteLook b) {
    return a.takenAt().equals(b.takenAt())
        && a.photo().equals(b.photo())
        && a.raft().equals(b.raft());
  }
}
