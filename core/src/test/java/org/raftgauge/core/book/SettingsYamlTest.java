// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.Problem;

/** Reading of book.yaml, and of YAML files at all. */
class SettingsYamlTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  @Test
  void settingsAreRead() {
    CropBook book = book().sound();
    assertEquals("Europe/Lisbon", book.zone().getId());
    assertEquals(LocalTime.of(4, 0), book.dayStartsAt());
    assertEquals(Optional.of("bench"), book.defaultStation());
    assertEquals("{date}_{raft}", book.photoNamePattern().orElseThrow().text());
    assertEquals(Units.METRIC, book.units());
  }

  @Test
  void settingsHaveDefaults() {
    CropBook book = book().with("book.yaml", "time_zone: Europe/Lisbon\n").sound();
    assertEquals(LocalTime.of(4, 0), book.dayStartsAt());
    assertEquals(Optional.empty(), book.defaultStation());
    assertEquals(Optional.empty(), book.photoNamePattern());
    assertEquals(Units.METRIC, book.units());
  }

  @Test
  void timeWithoutQuotesIsNotTakenForANumber() {
    // YAML 1.1 reads 11:30 as 690 in base 60; the text counts here.
    CropBook book =
        book().with("book.yaml", "time_zone: Europe/Lisbon\nday_starts_at: 11:30\n").sound();
    assertEquals(LocalTime.of(11, 30), book.dayStartsAt());
  }

  @Test
  void dayThatStartsAfterNoonIsTakenAndWarnedOf() {
    book().change("book.yaml", "04:00", "11:59").sound();
    BookReading reading = book().change("book.yaml", "04:00", "12:00").read();
    assertEquals(LocalTime.NOON, reading.book().dayStartsAt());
    assertEquals(
        List.of(
            Problem.warning(
                "book.yaml:2:16: day_starts_at",
                "the day starts at 12:00, so that photos of the hours before it count for the day"
                    + " before",
                "it is for farms that photograph past midnight: write an hour when nobody does, as"
                    + " in \"04:00\"")),
        reading.problems());
  }

  @Test
  void everyFaultOfTheSettingsIsNamedWithItsPlace() {
    assertEquals(
        List.of(
            "book.yaml:1:12: time_zone: the time zone \"Europe/Lisbn\" is unknown; did you mean"
                + " \"Europe/Lisbon\"? as in Europe/Lisbon",
            "book.yaml:2:16: day_starts_at: \"4 am\" is not a time; write hour:minute, as in"
                + " \"04:00\"",
            "book.yaml:4:13: photo_name: the field \"rft\" is unknown; did you mean \"raft\"?"
                + " known: date, time, raft, station, slot, any",
            "book.yaml:5:8: units: \"metrical\" is unknown; did you mean \"metric\"? known: metric,"
                + " imperial",
            "book.yaml:6:1: day_start_at: the key \"day_start_at\" is unknown; known: format",
            "book.yaml:3:10: station: the station \"bnch\" is unknown; did you mean \"bench\"?"
                + " known: bench, over-pond"),
        book()
            .with(
                "book.yaml",
                """
                time_zone: Europe/Lisbn
                day_starts_at: "4 am"
                station: bnch
                photo_name: "{date}_{rft}"
                units: metrical
                day_start_at: "04:00"
                """)
            .problems());
  }

  @Test
  void missingTimeZoneIsNamedAndTheRestIsRead() {
    BookReading reading = book().with("book.yaml", "units: imperial\n").read();
    assertEquals(
        "book.yaml:1:1: the key time_zone is missing; add time_zone: ...",
        reading.problems().get(0).toString());
    assertEquals(Units.IMPERIAL, reading.book().units());
    assertEquals(3, reading.book().plantings().size());
    assertTrue(reading.hasErrors());
  }

  @Test
  void bookOfANewerFormatIsNotGuessedAt() {
    BookReading reading =
        book().change("book.yaml", "station: bench", "format: 2\nstatoin: bench").read();
    assertEquals(
        List.of(
            "book.yaml:3:9: format: the book is written in format 2, newer than this program;"
                + " install a newer Raftgauge; this one reads format 1"),
        reading.problems().stream().map(Object::toString).toList());
    assertEquals(List.of(), reading.book().plantings());
  }

  @Test
  void formatOneIsTheFormatReadHere() {
    book().change("book.yaml", "station: bench", "format: 1\nstation: bench").sound();
  }

  @Test
  void brokenYamlIsNamedWithLineAndColumn() {
    List<String> problems =
        book().with("book.yaml", "time_zone: [Europe\nunits: metric\n").problems();
    assertEquals(
        "book.yaml:2:6: the YAML cannot be read (expected ',' or ']', but got :); mend the"
            + " indentation, quotes or brackets at or just before this place",
        problems.get(0));
  }

  @Test
  void oddFilesAreNamed() {
    assertEquals(
        "book.yaml: the file is empty; write it as lines of key: value",
        book().with("book.yaml", "# nothing yet\n").problems().get(0));
    assertEquals(
        "book.yaml: the file is not a map; write it as lines of key: value",
        book().with("book.yaml", "- a\n- b\n").problems().get(0));
    assertEquals(
        "book.yaml: there is no such file; make it, or look for it elsewhere",
        book().without("book.yaml").problems().get(0));
  }

  @Test
  void yamlCannotBuildObjectsNorBlowUp() {
    assertEquals(
        "book.yaml:1:12: the YAML cannot be read (Global tag is not allowed:"
            + " tag:yaml.org,2002:javax.script.ScriptEngineManager); mend the indentation, quotes or"
            + " brackets at or just before this place",
        book()
            .with("book.yaml", "time_zone: !!javax.script.ScriptEngineManager {a: b}\n")
            .problems()
            .get(0));
    StringBuilder bomb = new StringBuilder("a0: &a0 [x]\n");
    for (int i = 1; i < 60; i++) {
      bomb.append("a%d: &a%d [*a%d,*a%d,*a%d]\n".formatted(i, i, i - 1, i - 1, i - 1));
    }
    String first = book().with("book.yaml", bomb.toString()).problems().get(0);
    assertTrue(first.startsWith("book.yaml: the YAML cannot be read (Number of aliases"), first);
  }

  @Test
  void problemsOfAllFilesAreFoundAtOnce() {
    List<String> problems =
        book()
            .change("book.yaml", "station: bench", "statoin: bench")
            .change("layouts.yaml", "rows: 2", "rows: two")
            .change("crops.yaml", "exponent: 0.5}", "exponent: x}")
            .change("stations/bench.yaml", "1600", "-1600")
            .plantings("R9,P1,1,kale,,smal,,2026-03-20,2026-04-06,,,L1\n")
            .events("2026-05-01,died,R2,A9,,,,,\n")
            .problems();
    for (String file :
        List.of(
            "book.yaml",
            "layouts.yaml",
            "crops.yaml",
            "stations/bench.yaml",
            "plantings.csv",
            "events.csv")) {
      assertTrue(problems.stream().anyMatch(p -> p.startsWith(file)), file + " in " + problems);
    }
  }

  @Test
  void imperialNumbersFollowTheInchAndThePound() {
    // 1 in = 2.54 cm, 1 lb = 16 oz = 453.59237 g exactly (1959 agreement).
    assertEquals(1, Units.IMPERIAL.area(2.54 * 2.54), 1e-12);
    assertEquals(1, Units.IMPERIAL.weight(453.59237), 1e-12);
    assertEquals(16, Units.IMPERIAL.head(453.59237), 1e-9);
    assertEquals(1.5, Units.METRIC.weight(1500), 1e-12);
    assertEquals("sq in", Units.IMPERIAL.areaUnit());
  }
}
