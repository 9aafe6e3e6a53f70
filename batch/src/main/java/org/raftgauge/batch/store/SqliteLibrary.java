// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where the database's native library is unpacked from its jar. */
public final class SqliteLibrary {
  private static final String FOLDER = "org.sqlite.tmpdir";

  private SqliteLibrary() {}

  /**
   * Has the library unpacked into a new folder of temporary files that only this user may enter,
   * unless a folder is set already; it goes away with the process. Without such a folder the
   * library falls back on the common one.
   *
   * @return the folder
   */
  public static Path unpackPrivately() {
    String set = System.getProperty(FOLDER);
    if (set != null) {
      return Path.of(set);
    }
    try {
      // Made with the rights of its owner alone, on systems that know owners.
      Path folder = Files.createTempDirectory("raftgauge-");
      folder.toFile().deleteOnExit();
      System.setProperty(FOLDER, folder.toString());
      return folder;
    } catch (IOException noTemporaryFolder) {
      return Path.of(System.getProperty("java.io.tmpdir"));
    }
  }
}
