// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.spark.sql.Row;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.BorderTakes;
import org.raftgauge.core.site.SiteMeasure;

class RecordRowsTest {

  @Test
  void aPhotosMeasureComesBackEqual() {
    PhotoMeasure measure = photo(Optional.of("KV-1"), OptionalDouble.of(0.1 + 0.2));
    RecordRows<PhotoMeasure> rows = RecordRows.of(PhotoMeasure.class);
    assertEquals(measure, rows.record(rows.row(measure)));
  }

  @Test
  void whatIsAbsentStaysAbsent() {
    PhotoMeasure measure = photo(Optional.empty(), OptionalDouble.empty());
    RecordRows<PhotoMeasure> rows = RecordRows.of(PhotoMeasure.class);
    Row row = rows.row(measure);
    assertEquals(measure, rows.record(row));
    assertEquals(true, row.isNullAt(rows.schema().fieldIndex("sharpness")));
  }

  @Test
  void columnsAreTheComponentsInOrder() {
    assertEquals(
        List.of("day", "text", "numbers"), List.of(RecordRows.of(Plain.class).schema().names()));
    Plain plain = new Plain(LocalDate.of(2026, 5, 4), "x", List.of(1.5, -0.0));
    assertEquals(plain, RecordRows.of(Plain.class).record(RecordRows.of(Plain.class).row(plain)));
  }

  @Test
  void aMapIsRefusedByName() {
    assertEquals(
        "no row holds a java.util.Map<java.lang.String, java.lang.String>",
        assertThrows(IllegalArgumentException.class, () -> RecordRows.of(Odd.class)).getMessage());
  }

  /** Dates, texts, numbers. */
  public record Plain(LocalDate day, String text, List<Double> numbers) {}

  /** Not for rows. */
  public record Odd(Map<String, String> map) {}

  private static PhotoMeasure photo(Optional<String> raft, OptionalDouble number) {
    SiteMeasure site =
        new SiteMeasure(
            new SiteId(1, 2),
            number,
            number,
            number,
            true,
            0.25,
            12.5,
            0.97,
            number.isPresent()
                ? List.of(new SiteMeasure.Shape(1, 2, 3, 0.9, -0.1, 0.1))
                : List.of(),
            List.of(),
            0.8,
            number.isPresent() ? "" : "held back");
    return new PhotoMeasure(
        "2026-05-04/a.jpg",
        "ab".repeat(32),
        "bench",
        raft.map(r -> OffsetDateTime.parse("2026-05-04T18:00:00.123456789+02:00")),
        "",
        PhotoStatus.USED,
        "",
        "",
        number,
        number,
        number,
        List.of(
            new RaftMeasure(
                raft,
                "s1",
                "small",
                PoseSource.MARKERS,
                0.3,
                1.0,
                1500,
                true,
                number,
                number,
                List.of(site),
                0.9,
                "",
                List.of(new SiteId(0, 0)),
                List.of("a note"),
                List.of(
                    new Border(
                        new SiteId(0, 0),
                        new SiteId(1, 0),
                        0.25,
                        BorderTakes.ofCm2(1.0, 2.0, 3.0, 4.0, 5.0),
                        BorderTakes.ofCm2(0.0, 0.0, 0.0, 0.0, 0.5))))));
  }
}
