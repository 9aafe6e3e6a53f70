// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reading of placements, events, weighings, harvests, calls, climate, seen rows and manifests. */
class DiaryTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  @Test
  void bookWithoutADiaryIsWhole() {
    assertEquals(Diary.empty(), book().sound().diary());
  }

  @Test
  void aFilledListOfPicksIsAListOfWeighings() {
    CropBook book =
        book()
            .with(
                "weighings.csv",
                """
                raft,site,pond,berth,crop,variety,closed,area_cm2,predicted_weight_g,part,parts,weighed_at,fresh_weight_g,top_height_mm,state
                R1,A1,P1,,kale,,false,229.9,,8,8,2026-05-01T18:00,152.5,140,trimmed
                R1,A2,P1,,kale,,false,180.3,,5,8,,,,
                R1,A3,P1,,kale,,true,195.5,,6,8,,none,,
                """)
            .sound();
    assertEquals(152.5, book.diary().weighings().get(0).freshWeightG());
    assertEquals(1, book.diary().weighings().size(), "A2 was not weighed, A3 is a gap");
  }

  @Test
  void raftInASlotIsTheOnePlacedThereThatEvening() {
    CropBook book =
        book()
            .with(
                "placements.csv",
                """
                station,slot,raft,from,to
                over-pond,left,R1,2026-04-06,2026-04-20
                over-pond,left,R2,2026-04-20,
                over-pond,right,R1,2026-04-20,
                """)
            .sound();
    assertEquals(Optional.empty(), book.raftInSlot("over-pond", "left", LocalDate.of(2026, 4, 5)));
    assertEquals(Optional.of("R1"), book.raftInSlot("over-pond", "left", LocalDate.of(2026, 4, 6)));
    assertEquals(
        Optional.of("R1"), book.raftInSlot("over-pond", "left", LocalDate.of(2026, 4, 19)));
    assertEquals(
        Optional.of("R2"), book.raftInSlot("over-pond", "left", LocalDate.of(2026, 4, 20)));
    assertEquals(
        Optional.of("R1"), book.raftInSlot("over-pond", "right", LocalDate.of(2026, 9, 1)));
    assertEquals(Optional.empty(), book.raftInSlot("bench", "left", LocalDate.of(2026, 4, 6)));
    assertEquals(3, book.placements().size());
  }

  @Test
  void faultsOfPlacementsAreNamed() {
    assertEquals(
        List.of(
            "placements.csv:2: column station: \"over-pnd\" is unknown; did you mean \"over-pond\"?"
                + " known: bench, over-pond",
            "placements.csv:3: column slot: \"lft\" is unknown; did you mean \"left\"? known: left,"
                + " right",
            "placements.csv:4: column raft: \"R8\" is unknown; did you mean \"R1\"? known: R1, R2,"
                + " T1",
            "placements.csv:5: column to: \"2026-04-01\" is before from 2026-04-06; mend one of the"
                + " two dates",
            "placements.csv:7: column slot: \"left\" holds R1 of line 6 on the same days; write in"
                + " line 6 to which day it lay there",
            "placements.csv:8: column raft: \"R1\" lies in slot left of line 6 on the same days;"
                + " write in line 6 to which day it lay there",
            "placements.csv:9: column station: \"bench\" is a passing station, which has no slots; name"
                + " a fixed station, or delete the row",
            "placements.csv:10: column from: the cell is blank; fill it in"),
        book()
            .with(
                "placements.csv",
                """
                station,slot,raft,from,to
                over-pnd,left,R1,2026-04-06,
                over-pond,lft,R1,2026-04-06,
                over-pond,left,R8,2026-04-06,
                over-pond,left,R1,2026-04-06,2026-04-01
                over-pond,left,R1,2026-04-06,
                over-pond,left,R2,2026-05-06,
                over-pond,right,R1,2026-05-06,2026-05-07
                bench,left,R2,2026-04-06,
                over-pond,left,R2,,
                """)
            .problems());
  }

  @Test
  void placementAtAStationThatCannotBeUsedIsNoFurtherProblem() {
    List<String> problems =
        book()
            .change("stations/over-pond.yaml", "2600", "-1")
            .with("placements.csv", "station,slot,raft,from,to\nover-pond,any,R1,2026-04-06,\n")
            .problems();
    assertEquals(1, problems.size());
    assertTrue(problems.get(0).startsWith("stations/over-pond.yaml:5:19: camera_height_mm:"));
  }

  @Test
  void eventsComeInTheOrderOfTime() {
    CropBook book =
        book()
            .events(
                """
                2026-05-02T10:00,died,R1,A2,,,ana,root rot?,
                2026-05-01,cut,R2,,,,,,
                """)
            .sound();
    assertEquals(
        List.of(Event.Kind.CUT, Event.Kind.DIED), book.events().stream().map(Event::kind).toList());
    // A date alone is the beginning of the farm's day.
    assertEquals(OffsetDateTime.parse("2026-05-01T04:00+01:00"), book.events().get(0).at());
    Event died = book.events().get(1);
    assertEquals(2, died.line());
    assertEquals(List.of(SiteId.parse("A2")), died.sites());
    assertEquals("ana", died.by());
    assertEquals("root rot?", died.note());
    assertEquals(Event.Target.none(), died.target());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-05-01,dyed,R1,A1,,,,,|kind|\"dyed\" is unknown; did you mean \"died\"? known: moved,"
            + " replaced, thinned, cut, weighed, harvested, died, cleaned",
        "tomorrow,died,R1,A1,,,,,|at|\"tomorrow\" is not a time; write date and time, as in"
            + " 2026-04-06T18:00",
        "1970-01-01T00:00,died,R1,A1,,,,,|at|\"1970-01-01T00:00\" is out of range; write a time"
            + " from 1990 to 2200",
        ",died,R1,A1,,,,,|at|the cell is blank; fill it in",
        "2026-05-01,died,R11,A1,,,,,|raft|the raft \"R11\" is unknown; did you mean \"R1\"? known:"
            + " R1, R2, T1",
        "2026-05-01,died,R1,11,,,,,|site|\"11\" does not name sites; write sites as in A1;B2, or a"
            + " range as in A1-C3",
        "2026-05-01,moved,R1,A1,,,,,|to_raft|moved does not say where to; fill in to_raft, to_site"
            + " or both",
        "2026-05-01,died,R1,A1,R2,,,,|to_raft|only moved has a target; leave to_raft, to_site and"
            + " to_layout blank, or write moved",
        "2026-05-01,died,R1,A1,,B1,,,|to_site|only moved has a target; leave to_raft, to_site and"
            + " to_layout blank, or write moved",
        "2026-05-01,moved,R1,,a/b,,,,|to_raft|\"a/b\" is not a name: \"/\" may not stand in"
            + " it; write at most 32 letters, digits, spaces and . - _ ' ( ) & + #, beginning with"
            + " a letter or digit",
        "2026-05-01,moved,R1,,R5,,,,stripe|to_layout|\"stripe\" is unknown; did you mean"
            + " \"strip\"? known: small, strip"
      })
  void faultOfAnEventIsNamed(String row, String column, String text) {
    assertEquals(
        List.of("events.csv:2: column " + column + ": " + text),
        book().events(row + "\n").problems());
  }

  @Test
  void logsAreRead() {
    CropBook book =
        book()
            .with(
                "weighings.csv",
                """
                raft,site,weighed_at,fresh_weight_g,top_height_mm,state
                R1,A1,2026-05-01T18:00,152.5,140,trimmed
                R1,A2,2026-05-01,150,,
                """)
            .with("harvests.csv", "raft,harvested_at,heads,total_weight_g\nR2,2026-05-02,4,610.5\n")
            .with("calls.csv", "raft,site,called_on,call,by,note\nR1,A1,2026-05-01,pale,ana,\n")
            .with(
                "climate.csv",
                """
                pond,date,mean_air_c,dli_mol_m2,water_l,feed_g
                ,2026-05-01,21.5,17.2,,
                P1,2026-05-01,,,120,800
                """)
            .with("seen.csv", "item,until,by,note\ninspect R1,2026-05-03,ana,\n")
            .sound();
    Weighing first = book.diary().weighings().get(0);
    assertEquals(152.5, first.freshWeightG());
    assertEquals(OptionalDouble.of(140), first.topHeightMm());
    assertEquals(Optional.of(Weighing.State.TRIMMED), first.state());
    assertEquals(OffsetDateTime.parse("2026-05-01T18:00+01:00"), first.weighedAt());
    assertEquals(Optional.empty(), book.diary().weighings().get(1).state());
    assertEquals(4, book.diary().harvests().get(0).heads());
    assertEquals(610.5, book.diary().harvests().get(0).totalWeightG());
    assertEquals("pale", book.diary().calls().get(0).call());
    assertEquals(OptionalDouble.of(21.5), book.diary().climate().get(0).meanAirC());
    assertEquals("P1", book.diary().climate().get(1).pond());
    assertEquals(OptionalDouble.of(800), book.diary().climate().get(1).feedG());
    assertEquals(Optional.of(LocalDate.of(2026, 5, 3)), book.diary().seen().get(0).until());
  }

  @Test
  void faultsOfLogsAreNamed() {
    assertEquals(
        List.of(
            "weighings.csv:2: column fresh_weight_g: \"152,5\" is not a number; write a dot, as in"
                + " 152.5",
            "weighings.csv:3: column site: \"1A\" does not name a site; write a site as in B12",
            "weighings.csv:4: column state: \"dry\" is unknown; known: whole, trimmed, drained",
            "weighings.csv:5: column raft: \"R3\" is unknown; did you mean \"R1\"? known: R1, R2,"
                + " T1",
            "harvests.csv:2: column heads: \"4.5\" is not a whole number; count heads",
            "calls.csv:2: column call: \"ded\" is unknown; did you mean \"dead\"? known: on-track,"
                + " lagging, ahead, stalled, pale, dead, empty, held",
            "climate.csv:2: column pond: \"P9\" is unknown; did you mean \"P1\"? known: P1, P2",
            "climate.csv:3: column mean_air_c: \"210\" is out of range; write a number from -40 to"
                + " 60",
            "seen.csv:2: column item: the cell is blank; fill it in"),
        book()
            .with(
                "weighings.csv",
                """
                raft,site,weighed_at,fresh_weight_g,top_height_mm,state
                R1,A1,2026-05-01T18:00,"152,5",140,trimmed
                R1,1A,2026-05-01T18:00,152.5,140,trimmed
                R1,A1,2026-05-01T18:00,152.5,140,dry
                R3,A1,2026-05-01T18:00,152.5,140,
                """)
            .with("harvests.csv", "raft,harvested_at,heads,total_weight_g\nR2,2026-05-02,4.5,610\n")
            .with("calls.csv", "raft,called_on,call\nR1,2026-05-01,ded\n")
            .with("climate.csv", "pond,date,mean_air_c\nP9,2026-05-01,21\n,2026-05-02,210\n")
            .with("seen.csv", "item,until\n,2026-05-02\n")
            .problems());
  }

  @Test
  void slipsOfWholeRowsOfLogsAreNamed() {
    assertEquals(
        List.of(
            "weighings.csv:3: column weighed_at: line 2 weighs the same plant at the same time; keep"
                + " one of the two",
            "harvests.csv:2: column heads: \"40\" are more than the 4 sites of raft R2; count heads,"
                + " not grams or crates, or leave it where a site holds several"),
        book()
            .with(
                "weighings.csv",
                """
                raft,site,weighed_at,fresh_weight_g
                R1,A1,2026-05-01T18:00,152.5
                R1,A1,2026-05-01T18:00,125.5
                R1,A1,2026-05-02T18:00,160
                """)
            .with("harvests.csv", "raft,harvested_at,heads,total_weight_g\nR2,2026-05-02,40,610\n")
            .problems());
  }

  @Test
  void manifestIsReadByPhoto() {
    book()
        .with(
            "photos/manifest.csv",
            """
            photo,taken_at,station,slot,raft
            a/1.jpg,2026-04-16T18:00,over-pond,left,R1
            .\\b\\2.jpg,,,,
            """);
    Manifest manifest = Manifest.read(folder.resolve("photos/manifest.csv"));
    assertEquals(List.of(), manifest.problems());
    assertEquals(List.of("a/1.jpg", "b/2.jpg"), List.copyOf(manifest.rows().keySet()));
    assertEquals(
        new ManifestRow(
            2,
            "a/1.jpg",
            Optional.of("2026-04-16T18:00"),
            Optional.of("over-pond"),
            Optional.of("left"),
            Optional.of("R1")),
        manifest.rows().get("a/1.jpg"));
    assertEquals(Optional.empty(), manifest.rows().get("b/2.jpg").takenAt());
  }

  @Test
  void faultsOfAManifestAreNamedAndItsTimesStayAsWritten() {
    book()
        .with(
            "photos/manifest.csv",
            "photo,taken_at\n1.jpg,yesterday\n./1.jpg,2026-04-16T18:00\n,2026-04-16T18:00\n");
    Manifest manifest = Manifest.read(folder.resolve("photos/manifest.csv"));
    assertEquals(
        List.of(
            "manifest.csv:2: column taken_at: \"yesterday\" is not a time; write date and time, as"
                + " in 2026-04-06T18:00",
            "manifest.csv:3: column photo: \"1.jpg\" stands on line 2 too, which counts; keep one"
                + " of the two",
            "manifest.csv:4: column photo: the cell is blank; fill it in"),
        manifest.problems().stream().map(Object::toString).toList());
    assertEquals(Optional.of("yesterday"), manifest.rows().get("1.jpg").takenAt());
    assertEquals(Manifest.none().rows().size() + 1, manifest.rows().size());
  }
}
