// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Writes pictures without loss, as PNG. */
public final class PngFile {

  private PngFile() {}

  /**
   * Writes a picture.
   *
   * @param picture the picture
   * @param file the file; what is there is replaced
   * @throws IOException if it cannot be written, with the file and why
   */
  public static void write(BufferedImage picture, Path file) throws IOException {
    // Opened first: of a file that it may not write ImageIO prints a stack trace and names nothing.
    Files.newOutputStream(file).close();
    if (!ImageIO.write(picture, "png", file.toFile())) {
      throw new IOException(file + ": this Java cannot write PNG pictures");
    }
  }
}
