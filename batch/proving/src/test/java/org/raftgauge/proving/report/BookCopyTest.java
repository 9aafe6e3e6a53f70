// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BookCopyTest {
  @TempDir private Path folder;

  @Test
  void theBuiltInModelsAreRenamedAndNothingElse() throws IOException {
    Path book = Files.createDirectories(folder.resolve("book"));
    Files.writeString(
        book.resolve("crops.yaml"),
        """
        crops:
          basil: {colour_model: green-leaf}
          purple: {colour_model:  red-leaf}
          other: {colour_model: green-leaf-taught}
          mine: {colour_model: my-green-leaf}
        """);
    Files.writeString(book.resolve("history.db"), "of a run");
    Path copy = BookCopy.naming(book, folder.resolve("copy"), leaf -> leaf + "-on-coir");
    assertEquals(
        """
        crops:
          basil: {colour_model: green-on-coir}
          purple: {colour_model:  red-on-coir}
          other: {colour_model: green-leaf-taught}
          mine: {colour_model: my-green-leaf}
        """,
        Files.readString(copy.resolve("crops.yaml")));
    assertFalse(Files.exists(copy.resolve("history.db")));
  }
}
