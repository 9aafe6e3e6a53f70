// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.io.IOException;
import java.io.InputStream;
import java.net.JarURLConnection;
import java.net.URL;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import java.util.jar.JarEntry;
import java.util.zip.CRC32;

/**
 * Keeps the native library unpacked between starts: 65 MB are written once for a user, not at each
 * start, and nothing stays behind in the folder of temporary files when the process is killed.
 *
 * <p>An unpacked library is used only if its length and CRC-32 are those of the jar. It is written
 * under another name and then moved, so that no other process ever loads half of it.
 */
final class NativeCache {
  private static final String PART = ".part-";

  private final Path folder;

  NativeCache(Path folder) {
    this.folder = folder;
  }

  /** Returns the cache of this user: in the folder that the system has for such files. */
  static NativeCache ofUser() {
    String home = System.getProperty("user.home");
    String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    Path caches =
        os.startsWith("windows")
            ? set("LOCALAPPDATA").orElse(Path.of(home, "AppData", "Local"))
            : os.startsWith("mac")
                ? Path.of(home, "Library", "Caches")
                : set("XDG_CACHE_HOME").orElse(Path.of(home, ".cache"));
    return new NativeCache(caches.resolve("raftgauge"));
  }

  private static Optional<Path> set(String variable) {
    return Optional.ofNullable(System.getenv(variable)).filter(v -> !v.isBlank()).map(Path::of);
  }

  /**
   * Returns the unpacked file of a jar's entry, unpacking it if it is missing or not as in the jar.
   *
   * @param packed where the entry is
   * @return the file
   * @throws IOException if it is in no jar or cannot be written
   */
  Path file(URL packed) throws IOException {
    if (!(packed.openConnection() instanceof JarURLConnection jar)) {
      throw new IOException("not in a jar: " + packed);
    }
    JarEntry entry = jar.getJarEntry();
    String name = Path.of(entry.getName()).getFileName().toString();
    Path file =
        folder.resolve(
            String.format(Locale.ROOT, "%08x-%d-%s", entry.getCrc(), entry.getSize(), name));
    if (!isWhole(file, entry)) {
      unpack(jar, file);
      if (!isWhole(file, entry)) {
        throw new IOException("not as in the jar after unpacking: " + file);
      }
    }
    return file;
  }

  private static boolean isWhole(Path file, JarEntry entry) throws IOException {
    if (!Files.isRegularFile(file) || Files.size(file) != entry.getSize()) {
      return false;
    }
    CRC32 crc = new CRC32();
    byte[] buffer = new byte[1 << 18];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        crc.update(buffer, 0, n);
      }
    }
    return crc.getValue() == entry.getCrc();
  }

  private void unpack(JarURLConnection jar, Path file) throws IOException {
    Files.createDirectories(folder);
    clear();
    Path part = folder.resolve(file.getFileName() + PART + ProcessHandle.current().pid());
    try (InputStream in = jar.getInputStream()) {
      Files.copy(in, part, StandardCopyOption.REPLACE_EXISTING);
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** Deletes what processes left behind that were killed while unpacking. */
  private void clear() throws IOException {
    try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, "*" + PART + "*")) {
      for (Path part : parts) {
        String name = part.getFileName().toString();
        long pid =
            Long.parseLong("0" + name.substring(name.lastIndexOf('-') + 1).replaceAll("\\D", ""));
        if (ProcessHandle.of(pid).isEmpty()) {
          Files.deleteIfExists(part);
        }
      }
    }
  }
}
