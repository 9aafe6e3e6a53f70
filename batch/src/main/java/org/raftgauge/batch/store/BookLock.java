// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;

/**
 * Lets one run at a time write to a book.
 *
 * <p>The lock is the operating system's, on a byte far behind the end of {@code run.lock}, so it
 * goes away with its process, however that ends, and the file's text stays readable: it says who
 * holds it. The file itself stays.
 */
public final class BookLock implements AutoCloseable {
  private static final Path HOST_NAME = Path.of("/etc/hostname");
  private static final String FILE = "run.lock";
  private static final long PAUSE_MS = 200;

  private final FileChannel channel;

  private BookLock(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Takes the lock of a book, waiting for another run to end.
   *
   * @param book the book's folder
   * @param patience how long to wait
   * @param waiting told once who holds the lock, if someone does
   * @return the lock, held until closed
   * @throws IOException if it is still held at the end, or the book cannot be written
   */
  public static BookLock take(Path book, Duration patience, Consumer<String> waiting)
      throws IOException {
    Path file = book.resolve(FILE);
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      long endNanos = System.nanoTime() + patience.toNanos();
      boolean said = false;
      while (!locked(channel)) {
        if (System.nanoTime() >= endNanos) {
          throw new IOException(
              book
                  + " is in use by "
                  + holder(file)
                  + "; try again when that run has ended, or end it first if it hangs. If no such"
                  + " process runs there any more, the drive still holds its lock: wait a minute or"
                  + " open the drive anew");
        }
        if (!said) {
          waiting.accept(holder(file));
          said = true;
        }
        Thread.sleep(PAUSE_MS);
      }
      say(channel);
      return new BookLock(channel);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      channel.close();
      throw new IOException("stopped while waiting for " + book, e);
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  private static boolean locked(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock(Long.MAX_VALUE - 1, 1, false);
      return lock != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  private static void say(FileChannel channel) throws IOException {
    String text =
        "process "
            + ProcessHandle.current().pid()
            + " on "
            + host()
            + ", since "
            + OffsetDateTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS)
            + "\n";
    channel.truncate(0);
    channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)), 0);
  }

  /** Names this computer without asking the network, as looking up its address may. */
  private static String host() {
    for (String variable : List.of("HOSTNAME", "COMPUTERNAME")) {
      String name = System.getenv(variable);
      if (name != null && !name.isBlank()) {
        return name;
      }
    }
    try {
      String name = Files.readString(HOST_NAME).strip();
      return name.isEmpty() ? "this computer" : name;
    } catch (IOException noSuchFile) {
      return "this computer";
    }
  }

  private static String holder(Path file) throws IOException {
    String text = Files.readString(file).strip();
    return text.isEmpty() ? "another run" : "another run (" + text + ")";
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
