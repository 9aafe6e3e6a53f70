// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.net.URI;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.security.AccessControlException;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Reads the bytes of a photo from wherever it is. */
final class ReadListed implements Serializable {
  private static final long serialVersionUID = 1;

  /** Reads that fail are tried so often: stores have bad moments. */
  private static final int TRIES = 3;

  private final HashMap<String, String> settings = new HashMap<>();

  /**
   * Prepares.
   *
   * @param settings of the file systems
   */
  ReadListed(Configuration settings) {
    for (Map.Entry<String, String> entry : settings) {
      if (entry.getKey().startsWith("fs.")) {
        this.settings.put(entry.getKey(), entry.getValue());
      }
    }
  }

  /**
   * Reads a photo.
   *
   * @param photo the photo
   * @return its bytes
   * @throws InputException if it cannot be read, with reason and remedy
   */
  byte[] bytes(Listed photo) throws InputException {
    URI uri = URI.create(photo.uri());
    if ("file".equals(uri.getScheme())) {
      return ReadPhoto.bytes(java.nio.file.Path.of(uri), photo.photo());
    }
    if (photo.bytes() > ReadPhoto.LARGEST_BYTES) {
      throw ReadPhoto.tooLarge(photo.photo(), photo.bytes());
    }
    IOException last = new IOException("not tried");
    for (int i = 0; i < TRIES; i++) {
      try {
        return read(new Path(uri));
      } catch (FileNotFoundException gone) {
        throw problem(photo, "the file is not there any more", "copy it from the camera again");
      } catch (AccessControlException denied) {
        throw problem(
            photo, "you have no right to read the file", "change its rights, then run again");
      } catch (IOException e) {
        last = e;
      }
    }
    throw problem(
        photo,
        "the file cannot be read: " + last.getMessage(),
        "check the store and that you may read the file, then run again");
  }

  private byte[] read(Path file) throws IOException {
    Configuration configuration = new Configuration();
    settings.forEach(configuration::set);
    try (InputStream in = file.getFileSystem(configuration).open(file)) {
      return in.readAllBytes();
    }
  }

  private static InputException problem(Listed photo, String found, String remedy) {
    return new InputException(List.of(new Problem(photo.photo(), found, remedy)));
  }
}
