// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;

class SqliteLibraryTest {

  @Test
  void theLibraryIsUnpackedWhereOnlyItsUserMayEnter() throws IOException {
    String before = System.getProperty("org.sqlite.tmpdir");
    try {
      System.clearProperty("org.sqlite.tmpdir");
      Path folder = SqliteLibrary.unpackPrivately();
      assertEquals(folder.toString(), System.getProperty("org.sqlite.tmpdir"));
      assertTrue(Files.isDirectory(folder));
      assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
      assertEquals(
          "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)));
    } finally {
      if (before == null) {
        System.clearProperty("org.sqlite.tmpdir");
      } else {
        System.setProperty("org.sqlite.tmpdir", before);
      }
    }
  }
}
