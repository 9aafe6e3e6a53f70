// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.measure.PhotoFacts;

class MeasureAllTest {

  private static List<FoundPhoto> photos(int n) {
    return IntStream.range(0, n)
        .mapToObj(i -> new FoundPhoto(Path.of(name(i)), PhotoFacts.of(name(i))))
        .toList();
  }

  private static String name(int i) {
    return i + ".jpg";
  }

  private static Measured outcome(FoundPhoto photo) {
    return Measured.failed(photo.facts().photo(), "", "no photo", "none");
  }

  @Test
  void theNextPhotoIsReadWhileTheOnlyWorkerMeasures() throws Exception {
    CountDownLatch nextIsRead = new CountDownLatch(1);
    List<Boolean> inTime = new ArrayList<>();
    MeasureAll.measure(
        photos(2),
        1,
        photo -> {
          if (photo.facts().photo().equals(name(1))) {
            nextIsRead.countDown();
          }
          return () -> {
            inTime.add(awaits(nextIsRead));
            return outcome(photo);
          };
        },
        measured -> {});
    assertEquals(List.of(true, true), inTime);
  }

  private static boolean awaits(CountDownLatch latch) {
    try {
      return latch.await(20, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void outcomesComeInTheOrderOfThePhotosAndFewAreAhead() throws Exception {
    Map<String, Boolean> under = new ConcurrentHashMap<>();
    List<Integer> ahead = new ArrayList<>();
    List<String> order = new ArrayList<>();
    MeasureAll.measure(
        photos(50),
        3,
        photo -> {
          under.put(photo.facts().photo(), true);
          Supplier<Measured> left = () -> outcome(photo);
          return left;
        },
        measured -> {
          ahead.add(under.size());
          under.remove(measured.measure().photo());
          order.add(measured.measure().photo());
        });
    assertEquals(IntStream.range(0, 50).mapToObj(MeasureAllTest::name).toList(), order);
    assertTrue(ahead.stream().allMatch(n -> n <= 6), ahead.toString());
  }
}
