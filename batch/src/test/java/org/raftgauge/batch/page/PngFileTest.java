// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PngFileTest {
  private static final BufferedImage PICTURE = new BufferedImage(3, 2, BufferedImage.TYPE_INT_RGB);

  @TempDir Path folder;

  @Test
  void aPictureReplacesWhatIsThere() throws IOException {
    Path file = Files.writeString(folder.resolve("a.png"), "x".repeat(5000));
    PngFile.write(PICTURE, file);
    assertEquals(3, ImageIO.read(file.toFile()).getWidth());
    assertTrue(Files.size(file) < 5000);
  }

  @Test
  void aFileThatCannotBeWrittenIsNamedAndNoTraceIsPrinted() {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream err = System.err;
    // A folder cannot be written as a file, whoever tries; a file without rights could be by root.
    try (PrintStream catcher = new PrintStream(said, true, StandardCharsets.UTF_8)) {
      System.setErr(catcher);
      FileSystemException e =
          assertThrows(FileSystemException.class, () -> PngFile.write(PICTURE, folder));
      assertEquals(folder.toString(), e.getFile());
    } finally {
      System.setErr(err);
    }
    assertEquals("", said.toString(StandardCharsets.UTF_8));
  }
}
