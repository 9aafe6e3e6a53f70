// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A set whose photos are there many times over, for a long run: each copy lies in a folder of its
 * own and has bytes of its own, a comment telling it from the others, or it would be skipped.
 */
final class ManyTimes {
  private static final String MANIFEST = "manifest.csv";

  /** Marks the start of a JPEG file, two bytes; and a comment of two bytes, with its length. */
  private static final int START = 2;

  private static final byte[] COMMENT = {(byte) 0xff, (byte) 0xfe, 0, 4};

  private ManyTimes() {}

  /**
   * Copies.
   *
   * @param set a rendered set, its photos JPEG files named in a manifest
   * @param to folder of the benchmark's own, emptied first
   * @param times how often, at most 999
   * @return {@code to}, with book and photos
   */
  static Path of(Path set, Path to, int times) throws IOException {
    Folders.copy(set.resolve("book"), Folders.emptied(to).resolve("book"));
    List<String> lines = Files.readAllLines(set.resolve("photos").resolve(MANIFEST));
    List<String> manifest = new ArrayList<>(lines.subList(0, 1));
    for (int copy = 0; copy < times; copy++) {
      for (String line : lines.subList(1, lines.size())) {
        String photo = line.substring(0, line.indexOf(','));
        String folder = String.format(Locale.ROOT, "copy-%03d/", copy);
        manifest.add(folder + line);
        Path file = to.resolve("photos").resolve(folder + photo);
        Files.createDirectories(file.getParent());
        Files.write(file, told(Files.readAllBytes(set.resolve("photos").resolve(photo)), copy));
      }
    }
    Files.write(to.resolve("photos").resolve(MANIFEST), manifest);
    return to;
  }

  private static byte[] told(byte[] jpeg, int copy) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(jpeg.length + COMMENT.length + 2);
    out.write(jpeg, 0, START);
    out.writeBytes(COMMENT);
    out.write(copy >> 8);
    out.write(copy);
    out.write(jpeg, START, jpeg.length - START);
    return out.toByteArray();
  }
}
