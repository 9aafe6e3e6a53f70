// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NativeCacheTest {
  @TempDir private Path folder;

  private final byte[] library = new byte[700_000];
  private URL packed;
  private NativeCache cache;

  @BeforeEach
  void packALibrary() throws Exception {
    new Random(1).nextBytes(library);
    Path jar = folder.resolve("native.jar");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(jar))) {
      out.putNextEntry(new ZipEntry("some/system/library.so"));
      out.write(library);
      out.closeEntry();
    }
    packed = URI.create("jar:" + jar.toUri() + "!/some/system/library.so").toURL();
    cache = new NativeCache(folder.resolve("cache"));
  }

  @Test
  void aLibraryIsUnpackedOnceAndThenUsedAsItIs() throws IOException {
    Path first = cache.file(packed);
    FileTime then = FileTime.from(Instant.parse("2026-01-01T00:00:00Z"));
    Files.setLastModifiedTime(first, then);

    Path second = cache.file(packed);

    assertEquals(first, second);
    assertArrayEquals(library, Files.readAllBytes(second));
    assertEquals(then, Files.getLastModifiedTime(second));
  }

  @Test
  void aDamagedOrCutLibraryIsUnpackedAgain() throws IOException {
    Path file = cache.file(packed);
    byte[] damaged = library.clone();
    damaged[345_678] ^= 1;
    Files.write(file, damaged);
    assertArrayEquals(library, Files.readAllBytes(cache.file(packed)));

    Files.write(file, new byte[10]);
    assertArrayEquals(library, Files.readAllBytes(cache.file(packed)));
  }

  @Test
  void whatAKilledProcessLeftIsClearedAndWhatARunningOneWritesStays() throws IOException {
    Files.createDirectories(folder.resolve("cache"));
    // Process numbers are at most 2^22 on Linux and below 10^5 on macOS.
    Path left = Files.writeString(folder.resolve("cache/x.so.part-999999999"), "half");
    long running = ProcessHandle.current().pid();
    Path written = Files.writeString(folder.resolve("cache/y.so.part-" + running), "half");

    cache.file(packed);

    assertFalse(Files.exists(left));
    assertTrue(Files.exists(written));
  }

  @Test
  void aFileOutsideAJarIsNotACopyToKeep() throws Exception {
    URL plain = folder.resolve("native.jar").toUri().toURL();

    IOException said = assertThrows(IOException.class, () -> cache.file(plain));

    assertTrue(said.getMessage().startsWith("not in a jar: "), said.getMessage());
  }
}
