// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestSpellingTest {
  private static final List<String> CROPS = List.of("basil", "butterhead", "redleaf");

  // One slip each, or a third of the letters: counted by hand.
  @ParameterizedTest
  @CsvSource({
    "basl, basil", // left out
    "baasil, basil", // put in
    "bosil, basil", // changed
    "absil, basil", // swapped: one slip, two without counting swaps
    "BASIL, basil", // capitals do not count
    "buterhed, butterhead", // two slips in eight letters
    "red-leaf, redleaf"
  })
  void slipsAreForgiven(String found, String meant) {
    assertEquals(Optional.of(meant), NearestSpelling.of(found, CROPS));
  }

  @Test
  void nameThatIsNothingLikeAnyGetsNoGuess() {
    assertEquals(Optional.empty(), NearestSpelling.of("kale", CROPS));
    // Two slips in four letters: over the bound of one.
    assertEquals(Optional.empty(), NearestSpelling.of("ba", CROPS));
  }

  @Test
  void beginningOfAKnownNameIsNearToo() {
    List<String> keys = List.of("varieties", "colour_model", "colour_note", "harvest");
    assertEquals(Optional.of("colour_model"), NearestSpelling.of("colour", keys));
    assertEquals(Optional.of("harvest"), NearestSpelling.of("harv", keys));
    assertEquals(Optional.empty(), NearestSpelling.of("ha", keys));
  }

  @Test
  void ofTwoEquallyNearTheFirstInTheAlphabetIsTaken() {
    assertEquals(Optional.of("P1"), NearestSpelling.of("P", List.of("P2", "P1")));
  }

  @Test
  void remedyNamesTheNearestAndAllThatAreKnown() {
    assertEquals(
        "did you mean \"basil\"? known: basil, butterhead, redleaf",
        NearestSpelling.remedy("basill", CROPS));
    assertEquals("known: basil, butterhead, redleaf", NearestSpelling.remedy("kale", CROPS));
    assertEquals("none is known yet", NearestSpelling.remedy("kale", List.of()));
  }

  @Test
  void remedyDoesNotListHundredsOfNames() {
    List<String> rafts = IntStream.range(10, 40).mapToObj(i -> "R" + i).toList();
    assertEquals(
        "known: R10, R11, R12, R13, R14, R15, R16, R17, R18, R19, R20, R21 and 18 more",
        NearestSpelling.remedy("basil", rafts));
  }

  @Test
  void longNamesAreComparedInFull() {
    String name = "a".repeat(60);
    assertEquals(Optional.of(name), NearestSpelling.of(name.substring(1), List.of(name)));
  }
}
