// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.measure.PhotoFacts;

class SlicesTest {
  private static final long MB = 1L << 20;

  @Test
  void everyPhotoIsInOneSliceInOrder() {
    Random random = new Random(7);
    for (int n = 1; n < 60; n += 7) {
      List<Listed> photos = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        photos.add(photo(i, random.nextInt(5_000_000)));
      }
      for (int slices = 1; slices < 20; slices += 3) {
        List<List<Listed>> cut = Slices.of(photos, slices);
        assertTrue(cut.size() <= slices, cut.size() + " of " + slices);
        assertTrue(cut.stream().noneMatch(List::isEmpty));
        assertEquals(photos, cut.stream().flatMap(List::stream).toList());
      }
    }
  }

  @Test
  void aLargePhotoWeighsLikeManySmallOnes() {
    List<Listed> photos = new ArrayList<>(List.of(photo(0, 20 * MB)));
    for (int i = 1; i <= 16; i++) {
      photos.add(photo(i, MB));
    }
    // 16 photos of 1 MB, each with its 0.25 MB, are as much as the large one: 20 MB.
    assertEquals(List.of(1, 16), Slices.of(photos, 2).stream().map(List::size).toList());
  }

  @Test
  void thereAreFourSlicesACoreOrMoreWhereBytesAskForIt() {
    List<Listed> photos = new ArrayList<>();
    for (int i = 0; i < 1000; i++) {
      photos.add(photo(i, MB - (256 << 10)));
    }
    assertEquals(8, Slices.count(photos, 2, 1000 * MB));
    assertEquals(100, Slices.count(photos, 2, 10 * MB));
    assertEquals(3, Slices.count(photos.subList(0, 3), 2, MB));
  }

  private static Listed photo(int i, long bytes) {
    return new Listed(
        "file:/p/" + i, bytes, 0, Listed.Facts.of(PhotoFacts.of(String.valueOf(i))), "");
  }
}
