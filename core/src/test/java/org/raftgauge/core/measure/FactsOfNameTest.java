// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;

class FactsOfNameTest {
  @TempDir private Path folder;

  @BeforeEach
  void writeBook() throws IOException {
    Files.writeString(
        folder.resolve("book.yaml"), "time_zone: UTC\nphoto_name: \"{date}_{raft}\"\n");
    Files.writeString(
        folder.resolve("plantings.csv"),
        """
        raft,crop,layout,sown_on
        KV-1,basil,deck,2026-03-01
        S\u00fcd-1,basil,deck,2026-03-01
        a7,basil,deck,2026-03-01
        A7,basil,deck,2026-03-01
        """);
  }

  @Test
  void capitalsDoNotMatter() {
    assertEquals(Optional.of("KV-1"), raft("2026-03-10_kv-1.jpg"));
    assertEquals(Optional.of("KV-1"), raft("cards/2026-03-10_KV-1.JPG"));
  }

  @Test
  void whereCapitalsTellTwoRaftsApartTheyMatter() {
    assertEquals(Optional.of("a7"), raft("2026-03-10_a7.jpg"));
    assertEquals(Optional.of("A7"), raft("2026-03-10_A7.jpg"));
  }

  @Test
  void anAccentMayBeACharacterOfItsOwn() {
    assertEquals(Optional.of("S\u00fcd-1"), raft("2026-03-10_Su\u0308d-1.jpg"));
  }

  @Test
  void aRaftThatTheBookDoesNotKnowStaysAsWritten() {
    assertEquals(Optional.of("kv-2"), raft("2026-03-10_kv-2.jpg"));
  }

  private Optional<String> raft(String photo) {
    return MeasurePhoto.raftOfName(CropBook.read(folder).book(), photo);
  }
}
