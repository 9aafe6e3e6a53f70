// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;

class WarmUpTest {

  @Test
  void theBundledPhotoGoesTheWholeWayOfAPhoto() throws Exception {
    PhotoMeasure photo = WarmUp.measure();
    assertEquals(PhotoStatus.USED, photo.status());
    assertEquals("KV-112", photo.rafts().get(0).raft().orElseThrow());
    // Its board has twenty holes; one is bare.
    assertEquals(20, photo.rafts().get(0).sites().size());
    assertTrue(
        photo.rafts().get(0).sites().stream()
                .filter(s -> s.projectedAreaCm2().orElse(0) > 0)
                .count()
            >= 18);
  }
}
