// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class IslandsTest {

  @Test
  void raftsSeenTogetherAreSettledTogetherHoweverLongTheChain() {
    Islands islands = new Islands();
    islands.together(List.of("D", "C"));
    islands.together(List.of("A", "B"));
    islands.together(List.of("B", "C"));
    assertEquals(islands.of("1.jpg", "", List.of("A")), islands.of("2.jpg", "", List.of("D")));
    assertNotEquals(islands.of("1.jpg", "", List.of("A")), islands.of("3.jpg", "", List.of("E")));
  }

  @Test
  void copiesGoWhereTheirFirstPhotoGoes() {
    Islands islands = new Islands();
    islands.copies("ff", "1.jpg", List.of("A"));
    assertEquals(islands.of("1.jpg", "ff", List.of("A")), islands.of("2.jpg", "ff", List.of("B")));
    assertTrue(islands.isFirst("1.jpg", "ff"));
    assertFalse(islands.isFirst("2.jpg", "ff"));
    assertTrue(islands.isFirst("3.jpg", "00"));
  }
}
