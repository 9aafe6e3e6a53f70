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
final class PhotoFile {

  private PhotoFile() {}

  static byte[] bytes(Path file) throws InputException {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw wrong(file, "cannot be read", "give the path of a picture");
    }
  }

  static RgbImage picture(Path file) throws InputException {
    return PictureCodec.decode(bytes(file)).orElseThrow(() -> unchecked(file));
  }

  private static InputException unchecked(Path file) {
    return wrong(file, "is no picture that can be read", "save it as PNG");
  }

  /** Says what is known of a photo: its folders, the manifest beside it, the station given. */
  static PhotoFacts facts(Path photo, Optional<String> station) {
    Path file = photo.toAbsolutePath().normalize();
    Path list = file.resolveSibling("manifest.csv");
    Manifest manifest = Files.exists(list) ? Manifest.read(list) : Manifest.none();
    String name = file.getFileName().toString();
    Optional<ManifestRow> row = Optional.ofNullable(manifest.rows().get(name));
    String shown = file.getParent().getFileName() + "/" + name;
    return new PhotoFacts(
        shown,
        row.flatMap(ManifestRow::takenAt),
        row.flatMap(ManifestRow::station).or(() -> station),
        row.flatMap(ManifestRow::slot),
        row.flatMap(ManifestRow::raft));
  }

  static InputException wrong(Path file, String found, String remedy) {
    return new InputException(List.of(new Problem(file.toString(), found, remedy)));
  }
}
