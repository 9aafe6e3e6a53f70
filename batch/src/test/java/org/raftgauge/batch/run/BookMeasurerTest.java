// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.PhotoFacts;

/** What a known photo's measure depends on; the book is that of the samples. */
class BookMeasurerTest {
  private static final Path SAMPLES = Path.of("../sample-images/book");
  private static final String HEADER = "raft,site,weighed_at,fresh_weight_g,top_height_mm,state\n";

  @TempDir private Path book;

  @BeforeEach
  void copyTheBook() throws IOException {
    try (var files = Files.walk(SAMPLES)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path to = book.resolve(SAMPLES.relativize(file).toString());
        Files.createDirectories(to.getParent());
        Files.copy(file, to);
      }
    }
  }

  @Test
  void aRulersHeightMeasuresThePhotosOfItsRaftAnewAndNoOthers() throws IOException {
    String own = "2026-03-28_KV-112.jpg";
    String other = "2026-03-28_KV-118.jpg";
    String none = hash(own, "");
    String none2 = hash(other, "");
    String tall = "KV-112,A1,2026-03-28T20:00,150,180,whole\n";
    assertNotEquals(none, hash(own, tall));
    assertEquals(none2, hash(other, tall));
    assertNotEquals(hash(own, tall), hash(own, tall.replace(",180,", ",170,")));
  }

  @Test
  void aWeightAloneMeasuresNothingAnew() throws IOException {
    String own = "2026-03-28_KV-112.jpg";
    assertEquals(hash(own, ""), hash(own, "KV-112,A1,2026-03-28T20:00,150,,whole\n"));
    assertEquals(
        hash(own, "KV-112,A1,2026-03-28T20:00,150,180,whole\n"),
        hash(own, "KV-112,A1,2026-03-28T20:00,155,180,whole\n"));
  }

  @Test
  void whatACropIsHarvestedAndJudgedByMeasuresNothingAnew() throws IOException {
    String photo = "2026-03-28_KV-112.jpg";
    crops("");
    String plain = hash(photo, "");
    crops("    harvest: {head_weight_g: 150, window_dat: [28, 38]}\n");
    assertEquals(plain, hash(photo, ""));
    crops("    grader: butterhead\n    emerged_by_das: 9\n");
    assertEquals(plain, hash(photo, ""));
    crops("    limits: {lagging_share: 0.7, ahead_share: 1.5}\n");
    assertEquals(plain, hash(photo, ""));
    crops("    limits: {closed_outline: 0.3}\n");
    assertNotEquals(plain, hash(photo, ""));
    crops("    varieties:\n      Marle: {colour_model: red-leaf}\n");
    assertNotEquals(plain, hash(photo, ""));
  }

  private void crops(String more) throws IOException {
    Files.writeString(
        book.resolve("crops.yaml"),
        """
        crops:
          butterhead:
            colour_model: green-leaf
            height_model: {scale_mm: 5.2, exponent: 0.5}
        """
            + more);
  }

  private String hash(String photo, String weighings) throws IOException {
    Files.writeString(book.resolve("weighings.csv"), HEADER + weighings);
    return new BookMeasurer(CropBook.read(book).book()).settingsHash(PhotoFacts.of(photo));
  }
}
