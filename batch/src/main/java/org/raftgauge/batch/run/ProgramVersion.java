// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * Which program measured.
 *
 * @param version as released
 * @param measuringCode hash of the measuring library's classes, so that a measure is never taken
 *     for known after the code that made it has changed
 */
public record ProgramVersion(String version, String measuringCode) {

  /** Returns the version of the running program. */
  public static ProgramVersion current() {
    String version =
        Optional.ofNullable(ProgramVersion.class.getPackage().getImplementationVersion())
            .orElse("development");
    try {
      Path code =
          Path.of(PhotoMeasure.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      return new ProgramVersion(version, hash(code));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Returns the origin of a measure that this program makes. */
  Origin origin(String settings, String run) {
    return new Origin(settings, run, version, measuringCode);
  }

  /** Hashes a jar, or a folder of classes. */
  static String hash(Path code) throws IOException {
    if (Files.isRegularFile(code)) {
      return Digest.of(Files.readAllBytes(code));
    }
    MessageDigest digest = Digest.sha256();
    try (Stream<Path> files = Files.walk(code)) {
      List<Path> sorted = files.filter(Files::isRegularFile).sorted().toList();
      for (Path file : sorted) {
        digest.update(Files.readAllBytes(file));
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
