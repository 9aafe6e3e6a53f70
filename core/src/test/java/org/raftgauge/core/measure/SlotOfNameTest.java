// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.canopy.DrawnGround;

/** A fixed camera over two slots, and which of them a photo is of. */
class SlotOfNameTest {
  /** 800 x 300 px, 1 mm a pixel; two 2 x 3 boards of 400 x 300 mm side by side. */
  private static final String STATION =
      """
      kind: fixed
      image_width_px: 800
      image_height_px: 300
      lens: {fx_px: 1000}
      camera_height_mm: 1000
      slots:
        - {name: left, layout: small, corners_px: [[-0.5, -0.5], [399.5, -0.5], [399.5, 299.5], [-0.5, 299.5]], refine: none}
        - {name: right, layout: small, corners_px: [[399.5, -0.5], [799.5, -0.5], [799.5, 299.5], [399.5, 299.5]], refine: none}
      """;

  @TempDir Path folder;
  private CropBook book;

  @BeforeEach
  void readBook() {
    book =
        BookFolder.in(folder)
            .change("book.yaml", "{date}_{raft}", "{date}_{slot}_{any}")
            .with("stations/over-pond.yaml", STATION)
            .plantings("R3,P1,3,basil,,small,,2026-03-20,2026-04-06,,,L1\n")
            .with(
                "placements.csv",
                """
                station,slot,raft,from,to
                over-pond,left,R1,2026-04-06,
                over-pond,right,R3,2026-04-06,
                """)
            .sound();
  }

  private List<String> rafts(String photo, Optional<String> slotOfManifest) throws IOException {
    PhotoFacts facts =
        new PhotoFacts(
            photo,
            Optional.of("2026-04-20T18:00"),
            Optional.of("over-pond"),
            slotOfManifest,
            Optional.empty());
    byte[] bytes = DrawnFarm.png(DrawnGround.soil(800, 300).leaf(80, 80, 40, 14, 0.3).photo());
    return MeasurePhoto.measure(bytes, facts, book).measure().rafts().stream()
        .map(raft -> raft.slot() + " " + raft.raft().orElse("?"))
        .toList();
  }

  @Test
  void aNameThatTellsASlotLeavesOutTheOthers() throws IOException {
    assertEquals(List.of("right R3"), rafts("2026-04-20_right_1.png", Optional.empty()));
    assertEquals(List.of("left R1"), rafts("2026-04-20_LEFT_2.png", Optional.empty()));
  }

  @Test
  void aNameThatTellsNoSlotOfTheStationLeavesOutNone() throws IOException {
    List<String> both = List.of("left R1", "right R3");
    assertEquals(both, rafts("2026-04-20_middle_1.png", Optional.empty()));
    assertEquals(both, rafts("plot.png", Optional.empty()));
  }

  @Test
  void theManifestsSlotGoesBeforeTheNames() throws IOException {
    assertEquals(List.of("left R1"), rafts("2026-04-20_right_1.png", Optional.of("left")));
  }
}
