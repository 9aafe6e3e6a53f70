// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import org.raftgauge.core.history.Sight;

/** A plant's sight of one evening. */
record Seen(Follow plant, Sight sight) {

  /** Says whether it is one of a patch. */
  boolean isOn(Patch patch) {
    return patch.cohort() == plant.cohort() && patch.raft().equals(sight.raft());
  }
}
