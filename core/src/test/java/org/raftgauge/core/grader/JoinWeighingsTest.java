// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.grader.JoinWeighings.Joined;
import org.raftgauge.core.grader.JoinWeighings.NotJoined;
import org.raftgauge.core.grader.JoinWeighings.Subject;

class JoinWeighingsTest {
  private static final OffsetDateTime EIGHT = OffsetDateTime.parse("2026-04-16T08:00+01:00");
  private static final SiteId B2 = SiteId.parse("B2");
  private static final Map<Integer, Subject> SUBJECTS =
      Map.of(
          2, new Subject("KV-1/B2/2026-03-20", "basil", "Ondine", false, OptionalDouble.of(320)));

  @Test
  void nearestPhotoOfTheSamePlantIsTaken() {
    Joined joined =
        JoinWeighings.join(
            List.of(weighing()),
            SUBJECTS,
            List.of(
                sighting("early.jpg", EIGHT.minusHours(30), 200),
                sighting("evening.jpg", EIGHT.minusHours(14), 240),
                sighting("next.jpg", EIGHT.plusHours(20), 280)),
            Duration.ofHours(24));

    Weighed weighed = joined.weighed().get(0);
    assertEquals("evening.jpg", weighed.photo());
    assertEquals(
        new Traits(
            "Ondine", OptionalDouble.of(240), OptionalDouble.of(180), OptionalDouble.of(320)),
        weighed.traits());
    assertEquals(Regime.OPEN, weighed.regime());
    assertEquals(List.of(), joined.notJoined());
  }

  @Test
  void weightOfAPlantThatWasBrownIsNotTaken() {
    Subject brown =
        new Subject("KV-1/B2/2026-03-20", "basil", "Ondine", true, OptionalDouble.empty());
    Joined joined =
        JoinWeighings.join(
            List.of(weighing()),
            Map.of(2, brown),
            List.of(sighting("evening.jpg", EIGHT.minusHours(14), 240)),
            Duration.ofHours(24));
    assertEquals(List.of(), joined.weighed());
    assertEquals(
        List.of(
            new NotJoined(
                2,
                "the plant at B2 of KV-1 was brown by its photos before: what a dead plant weighs"
                    + " tells nothing of living ones; strike the row, or check raft and site")),
        joined.notJoined());
  }

  @Test
  void photosOfTheSamePlantHeldOrEmptyAreNotTaken() {
    Sighting held =
        new Sighting(
            "KV-1",
            B2,
            "KV-1/B2/2026-03-20",
            EIGHT.minusHours(1),
            "held.jpg",
            OptionalDouble.empty(),
            false,
            "blurred");
    Joined joined =
        JoinWeighings.join(
            List.of(weighing()),
            SUBJECTS,
            List.of(held, sighting("evening.jpg", EIGHT.minusHours(14), 240)),
            Duration.ofHours(24));
    assertEquals("evening.jpg", joined.weighed().get(0).photo());

    assertEquals(
        List.of(new NotJoined(2, "the nearest photo, held.jpg, is held: blurred")),
        JoinWeighings.join(List.of(weighing()), SUBJECTS, List.of(held), Duration.ofHours(24))
            .notJoined());
  }

  @Test
  void photoTooFarAwaySaysHowFar() {
    assertEquals(
        List.of(
            new NotJoined(
                2,
                "the nearest photo, early.jpg, is 30.0 hours away; allow more hours or photograph"
                    + " nearer to the weighing")),
        JoinWeighings.join(
                List.of(weighing()),
                SUBJECTS,
                List.of(sighting("early.jpg", EIGHT.minusHours(30), 200)),
                Duration.ofHours(24))
            .notJoined());
  }

  @Test
  void photoOfAnotherWeekDoubtsTheDate() {
    assertEquals(
        List.of(
            new NotJoined(
                2,
                "the nearest photo, early.jpg, is 31 days away; check the date, or photograph"
                    + " nearer to the weighing")),
        JoinWeighings.join(
                List.of(weighing()),
                SUBJECTS,
                List.of(sighting("early.jpg", EIGHT.minusDays(31), 200)),
                Duration.ofHours(24))
            .notJoined());
  }

  @Test
  void weighingOfNoPlantAndPlantWithoutPhotoAreSaid() {
    assertEquals(
        List.of(
            new NotJoined(
                2, "no plant stood at B2 of KV-1 then; check raft, site and date, or the events")),
        JoinWeighings.join(List.of(weighing()), Map.of(), List.of(), Duration.ofHours(24))
            .notJoined());
    assertEquals(
        List.of(
            new NotJoined(
                2, "no photo shows B2 of KV-1; photograph a raft before its plants are weighed")),
        JoinWeighings.join(List.of(weighing()), SUBJECTS, List.of(), Duration.ofHours(24))
            .notJoined());
  }

  @Test
  void anotherPlantAtTheSameSiteIsNotTaken() {
    Sighting other =
        new Sighting(
            "KV-1",
            B2,
            "KV-1/B2/2026-01-02",
            EIGHT.minusHours(2),
            "old.jpg",
            OptionalDouble.of(400),
            true,
            "");
    assertEquals(
        1,
        JoinWeighings.join(List.of(weighing()), SUBJECTS, List.of(other), Duration.ofHours(24))
            .notJoined()
            .size());
  }

  @Test
  void aTopThatNoRulerGaveIsTheSecondCamerasAndARulersTopKeepsItsPlace() {
    Sighting seen =
        new Sighting(
            "KV-1",
            B2,
            "KV-1/B2/2026-03-20",
            EIGHT.minusHours(1),
            "seen.jpg",
            OptionalDouble.of(240),
            true,
            "",
            Optional.of(new Sighting.SeenHeight(95, 150)));
    Weighing noRuler =
        new Weighing(2, "KV-1", B2, EIGHT, 62.5, OptionalDouble.empty(), Optional.empty());

    Traits byCamera = only(noRuler, seen);
    Traits byRuler = only(weighing(), seen);

    assertEquals(OptionalDouble.of(150), byCamera.topHeightMm());
    assertEquals(OptionalDouble.of(180), byRuler.topHeightMm());
    assertEquals(OptionalDouble.of(95), byRuler.meanHeightMm());
  }

  private static Traits only(Weighing weighing, Sighting sighting) {
    return JoinWeighings.join(List.of(weighing), SUBJECTS, List.of(sighting), Duration.ofHours(24))
        .weighed()
        .get(0)
        .traits();
  }

  private static Weighing weighing() {
    return new Weighing(
        2, "KV-1", B2, EIGHT, 62.5, OptionalDouble.of(180), Optional.of(Weighing.State.TRIMMED));
  }

  private static Sighting sighting(String photo, OffsetDateTime at, double areaCm2) {
    return new Sighting(
        "KV-1", B2, "KV-1/B2/2026-03-20", at, photo, OptionalDouble.of(areaCm2), false, "");
  }
}
