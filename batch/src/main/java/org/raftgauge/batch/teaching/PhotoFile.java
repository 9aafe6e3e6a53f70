// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Manifest;
import org.raftgauge.core.book.ManifestRow;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.opencv.PictureCodec;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Reads a photo or a painted picture, and what the manifest beside it says. */
public final class PhotoFile {

  /** A manifest lies beside the photo or at most this many folders up, itself counted. */
  private static final int LEVELS = 3;

  private PhotoFile() {}

  public static byte[] bytes(Path file) throws InputException {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw wrong(file, "cannot be read", "give the path of a picture");
    }
  }

  public static RgbImage picture(Path file) throws InputException {
    return PictureCodec.decode(bytes(file)).orElseThrow(() -> unchecked(file));
  }

  private static InputException unchecked(Path file) {
    return wrong(file, "is no picture that can be read", "save it as PNG");
  }

  /**
   * Says what is known of a photo: its folders, the manifest beside it or in a folder above, the
   * station given.
   */
  public static PhotoFacts facts(Path photo, Optional<String> station) {
    Path file = photo.toAbsolutePath().normalize();
    Optional<ManifestRow> row = row(file);
    String shown = file.getParent().getFileName() + "/" + file.getFileName();
    return new PhotoFacts(
        shown,
        row.flatMap(ManifestRow::takenAt),
        row.flatMap(ManifestRow::station).or(() -> station),
        row.flatMap(ManifestRow::slot),
        row.flatMap(ManifestRow::raft));
  }

  private static Optional<ManifestRow> row(Path file) {
    Path folder = file.getParent();
    for (int level = 0; level < LEVELS && folder != null; level++, folder = folder.getParent()) {
      Path list = folder.resolve("manifest.csv");
      if (Files.exists(list)) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        return Optional.ofNullable(Manifest.read(list).rows().get(name));
      }
    }
    return Optional.empty();
  }

  static InputException wrong(Path file, String found, String remedy) {
    return new InputException(List.of(new Problem(file.toString(), found, remedy)));
  }
}
