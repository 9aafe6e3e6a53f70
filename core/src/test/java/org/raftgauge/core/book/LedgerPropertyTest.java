// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What must hold whatever events a grower writes down, sensible or not. */
class LedgerPropertyTest {
  private static final String[] RAFTS = {"R1", "R2", "T1", "R5"};
  private static final String[] SITES = {"A1", "A2", "A3", "B1", "B2", "B3", ""};

  @TempDir Path folder;

  @Test
  void noSiteHoldsTwoPlantsAndNoPlantStandsAtTwoSites() {
    forRandomBooks(
        book -> {
          for (int day = 1; day <= 30; day++) {
            Instant at = book.farmDay().start(LocalDate.of(2026, 4, day)).plusSeconds(50_000);
            Set<String> spots = new HashSet<>();
            for (PlantLife life : book.plants()) {
              List<PlantLife.Stay> now =
                  life.stays().stream().filter(stay -> stay.holdsAt(at)).toList();
              assertTrue(now.size() <= 1, life.plant());
              now.forEach(
                  stay ->
                      assertTrue(
                          spots.add(stay.planting().raft() + "/" + stay.site()), life.plant()));
            }
          }
        });
  }

  @Test
  void namesOfPlantsAreTheirOwn() {
    forRandomBooks(
        book ->
            assertEquals(
                book.plants().size(),
                book.plants().stream().map(PlantLife::plant).distinct().count()));
  }

  @Test
  void staysOfAPlantFollowEachOther() {
    forRandomBooks(
        book -> {
          for (PlantLife life : book.plants()) {
            for (int i = 0; i < life.stays().size(); i++) {
              PlantLife.Stay stay = life.stays().get(i);
              boolean last = i == life.stays().size() - 1;
              assertTrue(last || stay.ending() == PlantLife.Ending.MOVED, life.plant());
              assertEquals(stay.to().isEmpty(), stay.ending() == PlantLife.Ending.NONE);
              assertTrue(stay.to().map(to -> !to.isBefore(stay.from())).orElse(true));
              assertTrue(last || !life.stays().get(i + 1).from().isBefore(stay.to().orElseThrow()));
            }
          }
        });
  }

  @Test
  void plantsStandOnlyAtSitesOfTheirPlantingAndRaft() {
    forRandomBooks(
        book ->
            book.plants()
                .forEach(
                    life ->
                        life.stays()
                            .forEach(
                                stay -> {
                                  assertTrue(stay.planting().holds(stay.site()), life.plant());
                                  Layout layout =
                                      book.layout(
                                              stay.planting().layout(),
                                              book.farmDay().evening(stay.from()))
                                          .orElseThrow();
                                  assertTrue(layout.grid().has(stay.site()), life.plant());
                                })));
  }

  @Test
  void everyRaftOnWhichAPlantStandsIsExpected() {
    forRandomBooks(
        book -> {
          for (int day = 1; day <= 30; day++) {
            LocalDate evening = LocalDate.of(2026, 4, day);
            Instant last = book.farmDay().start(evening.plusDays(1)).minusNanos(1);
            Set<String> standing = new HashSet<>();
            book.plants().stream()
                .flatMap(life -> life.stays().stream())
                .filter(stay -> stay.holdsAt(last))
                .forEach(stay -> standing.add(stay.planting().raft()));
            assertTrue(book.expectedRafts(evening).containsAll(standing));
          }
        });
  }

  @Test
  void sameBookReadsTheSameTwice() {
    BookFolder folder = BookFolder.in(this.folder).events(events(new Random(4), 12));
    BookReading first = folder.read();
    BookReading second = folder.read();
    assertEquals(first.problems(), second.problems());
    assertEquals(first.book(), second.book());
  }

  @Test
  void orderOfRowsOfDifferentTimesDoesNotMatter() {
    Random random = new Random(6);
    for (int n = 0; n < 20; n++) {
      List<String> rows = new ArrayList<>();
      for (int day = 7; day < 19; day++) {
        rows.add(event(random, "2026-04-%02dT10:00".formatted(day)));
      }
      List<PlantLife> before = plants(rows);
      java.util.Collections.shuffle(rows, random);
      assertEquals(before, plants(rows));
    }
  }

  private List<PlantLife> plants(List<String> rows) {
    return BookFolder.in(folder).events(String.join("", rows)).read().book().plants();
  }

  private interface Check {
    void of(CropBook book);
  }

  private void forRandomBooks(Check check) {
    Random random = new Random(20260406);
    for (int n = 0; n < 60; n++) {
      check.of(BookFolder.in(folder).events(events(random, 14)).read().book());
    }
  }

  private static String events(Random random, int count) {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < count; i++) {
      rows.append(
          event(
              random,
              "2026-04-%02dT%02d:00".formatted(2 + random.nextInt(24), random.nextInt(24))));
    }
    return rows.toString();
  }

  private static String event(Random random, String at) {
    List<Event.Kind> kinds = List.copyOf(java.util.EnumSet.allOf(Event.Kind.class));
    Event.Kind kind = kinds.get(random.nextInt(kinds.size()));
    String raft = RAFTS[random.nextInt(RAFTS.length)];
    String site = SITES[random.nextInt(SITES.length)];
    String to = "";
    String toSite = "";
    if (kind == Event.Kind.MOVED || random.nextInt(3) == 0) {
      kind = Event.Kind.MOVED;
      to = RAFTS[random.nextInt(RAFTS.length)] + (random.nextBoolean() ? ";R5" : "");
      toSite = SITES[random.nextInt(SITES.length)];
    }
    return String.join(
            ",",
            at,
            kind.name().toLowerCase(java.util.Locale.ROOT),
            raft,
            site,
            to,
            toSite,
            "",
            "",
            to.contains("R5") ? "small" : "")
        + "\n";
  }
}
