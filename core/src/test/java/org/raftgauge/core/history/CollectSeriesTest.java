// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.PlantSeries.AgeClock;
import org.raftgauge.core.site.SiteMeasure;

/** R1 is planted on 6 April 2026, a tray T1 sown on 1 April; the farm's day starts at 04:00. */
class CollectSeriesTest {
  @TempDir Path folder;

  private final List<SiteLook> looks = new ArrayList<>();

  private CropBook with(String events) {
    return BookFolder.in(folder).events(events).sound();
  }

  private CollectSeriesTest see(String spot, String at, double areaCm2) {
    int slash = spot.indexOf('/');
    OptionalDouble area = OptionalDouble.of(areaCm2);
    SiteMeasure measure =
        new SiteMeasure(
            SiteId.parse(spot.substring(slash + 1)),
            area,
            OptionalDouble.of(1),
            area,
            false,
            0,
            0,
            1,
            List.of(),
            List.of(),
            1,
            "");
    looks.add(
        new SiteLook(
            at + spot,
            "bench",
            spot.substring(0, slash),
            OffsetDateTime.parse(at + ":00+01:00"),
            measure));
    return this;
  }

  private static LocalDate april(int day) {
    return LocalDate.of(2026, 4, day);
  }

  private static List<Double> areas(PlantSeries series) {
    return series.sights().stream().map(Sight::areaCm2).toList();
  }

  private static PlantSeries only(List<PlantSeries> all) {
    assertEquals(1, all.size(), all.toString());
    return all.get(0);
  }

  @Test
  void sightsAreInTheOrderOfTimeWhateverTheOrderOfLooks() {
    CropBook book = with("");
    see("R1/A1", "2026-04-09T18:00", 12)
        .see("R1/A1", "2026-04-07T18:00", 10)
        .see("R1/A1", "2026-04-08T18:00", 11);
    PlantSeries series = only(CollectSeries.upTo(book, looks, april(9)));
    assertEquals(List.of(10.0, 11.0, 12.0), areas(series));
    // 18:00 of the day after planting is day 1.75.
    assertEquals(1.75, series.sights().get(0).ageDays(), 1e-9);
    assertEquals(AgeClock.TRANSPLANT, series.clock());
    assertEquals(april(6), series.since());
    Collections.shuffle(looks, new java.util.Random(2));
    assertEquals(series, only(CollectSeries.upTo(book, looks, april(9))));
  }

  @Test
  void looksLaterThanTheEveningAreNotSeen() {
    CropBook book = with("");
    see("R1/A1", "2026-04-07T18:00", 10)
        .see("R1/A1", "2026-04-09T03:59", 11)
        .see("R1/A1", "2026-04-09T04:00", 12);
    // 03:59 still belongs to the evening of the 8th.
    PlantSeries series = only(CollectSeries.upTo(book, looks, april(8)));
    assertEquals(List.of(10.0, 11.0), areas(series));
    assertEquals(april(8), series.last().evening());
  }

  @Test
  void lastLookOfAnEveningCounts() {
    CropBook book = with("");
    see("R1/A1", "2026-04-07T18:00", 10)
        .see("R1/A1", "2026-04-07T22:00", 11)
        .see("R1/A1", "2026-04-08T18:00", 12);
    assertEquals(List.of(11.0, 12.0), areas(only(CollectSeries.upTo(book, looks, april(8)))));
  }

  @Test
  void cutStartsTheSeriesAnewAndTheGrowthBeforeIsAnEndedOne() {
    CropBook book = with("2026-04-10T09:00,cut,R1,A1,,,,,\n");
    see("R1/A1", "2026-04-09T18:00", 90)
        .see("R1/A1", "2026-04-10T18:00", 5)
        .see("R1/A1", "2026-04-11T18:00", 6);
    PlantSeries series = only(CollectSeries.upTo(book, looks, april(11)));
    assertEquals(AgeClock.CUT, series.clock());
    assertEquals(april(10), series.since());
    assertEquals(List.of(5.0, 6.0), areas(series));
    // Before the evening of the cut it still is one whole.
    assertEquals(List.of(90.0), areas(only(CollectSeries.upTo(book, looks, april(9)))));
    List<PlantSeries> all = CollectSeries.withEnded(book, looks, april(11));
    assertEquals(2, all.size());
    assertEquals(AgeClock.TRANSPLANT, all.get(0).clock());
    assertEquals(List.of(90.0), areas(all.get(0)));
    assertEquals(series, all.get(1));
  }

  @Test
  void movedPlantKeepsItsSeriesAndTellsWhereItStandsNow() {
    CropBook book = with("2026-04-08T09:00,moved,R1,A1;B2,R1,B2;A1,,,\n");
    see("R1/A1", "2026-04-07T18:00", 10).see("R1/B2", "2026-04-08T18:00", 11);
    PlantSeries series = only(CollectSeries.upTo(book, looks, april(8)));
    assertEquals("R1/A1/2026-04-06", series.plant());
    assertEquals(List.of(10.0, 11.0), areas(series));
    assertEquals(SiteId.parse("B2"), series.site());
  }

  @Test
  void plantMovedToARaftThatSortsBeforeItsOwnIsSeenInTheOrderOfTime() {
    CropBook book =
        with("2026-04-07T09:00,died,R1,A1,,,,,\n2026-04-08T09:00,moved,R2,A1,R1,A1,,,\n");
    see("R1/A1", "2026-04-08T18:00", 11)
        .see("R2/A1", "2026-04-07T18:00", 10)
        .see("R1/A1", "2026-04-09T18:00", 12);
    PlantSeries series = only(CollectSeries.upTo(book, looks, april(9)));
    assertEquals("R2/A1/2026-04-06", series.plant());
    assertEquals(List.of(10.0, 11.0, 12.0), areas(series));
  }

  @Test
  void replacedPlantHasASeriesOfItsOwnAndTheOldOneHasEnded() {
    CropBook book = with("2026-04-08T09:00,replaced,R1,A1,,,,,\n");
    see("R1/A1", "2026-04-07T18:00", 10).see("R1/A1", "2026-04-08T18:00", 2);
    PlantSeries now = only(CollectSeries.upTo(book, looks, april(8)));
    assertEquals(List.of(2.0), areas(now));
    assertEquals(0.75, now.last().ageDays(), 1e-9);
    List<PlantSeries> all = CollectSeries.withEnded(book, looks, april(8));
    assertEquals(2, all.size());
    assertEquals("R1/A1/2026-04-06", all.get(0).plant());
    assertEquals(List.of(10.0), areas(all.get(0)));
    // Standing tells them apart.
    assertEquals(List.of(now), CollectSeries.standing(book, all, april(8)));
    assertEquals(List.of(all.get(0)), CollectSeries.standing(book, all, april(7)));
  }

  @Test
  void plantThatHasLeftHasNoSeriesButAnEndedOne() {
    CropBook book = with("2026-04-09T09:00,died,R1,A1,,,,,\n");
    see("R1/A1", "2026-04-08T18:00", 10).see("R1/A2", "2026-04-08T18:00", 20);
    assertEquals(2, CollectSeries.upTo(book, looks, april(8)).size());
    assertEquals(SiteId.parse("A2"), only(CollectSeries.upTo(book, looks, april(9))).site());
    assertEquals(2, CollectSeries.withEnded(book, looks, april(9)).size());
  }

  @Test
  void tillItIsSownNothingGrowsThere() {
    CropBook book = with("");
    see("R1/A1", "2026-04-05T18:00", 3);
    assertEquals(List.of(), CollectSeries.withEnded(book, looks, april(9)));
  }

  @Test
  void trayRunsOnDaysAfterSowing() {
    CropBook book = with("");
    see("T1/A1", "2026-04-08T18:00", 1);
    PlantSeries series = only(CollectSeries.upTo(book, looks, april(8)));
    assertEquals(AgeClock.SOWING, series.clock());
    assertEquals(7.75, series.last().ageDays(), 1e-9);
  }

  @Test
  void seriesWithoutASightIsRefused() {
    CropBook book = with("");
    see("T1/A1", "2026-04-08T18:00", 1);
    PlantSeries one = only(CollectSeries.upTo(book, looks, april(8)));
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                new PlantSeries(
                    "x", one.planting(), one.site(), one.clock(), one.since(), List.of()));
    assertEquals("sights must be one or more, got none of x", e.getMessage());
  }
}
