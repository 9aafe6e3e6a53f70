// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.folder;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Reads the bytes of a photo file. */
public final class ReadPhoto {
  /** Larger than any photo of a camera; a limit so that one wrong file cannot fill the memory. */
  public static final long LARGEST_BYTES = 512L << 20;

  /** A share that hiccups is asked again after so long, each time twice as long as before. */
  private static final long FIRST_PAUSE_MS = 250;

  private static final int TRIES = 4;

  private ReadPhoto() {}

  /** Reads a file once. */
  interface Reader {
    byte[] read() throws IOException;
  }

  /**
   * Reads a file.
   *
   * @param file the file
   * @param photo its path as shown to the user
   * @return its bytes
   * @throws InputException if it is over 512 MB or cannot be read, with reason and remedy
   */
  public static byte[] bytes(Path file, String photo) throws InputException {
    return bytes(file, photo, why -> {});
  }

  /**
   * Reads a file. Where the card or a network drive gives an error, or fewer bytes than the file
   * has, it is asked again a few times.
   *
   * @param file the file
   * @param photo its path as shown to the user
   * @param again told why, each time before the file is read again
   * @return its bytes
   * @throws InputException if it is over 512 MB or cannot be read, with reason and remedy
   */
  public static byte[] bytes(Path file, String photo, Consumer<String> again)
      throws InputException {
    try {
      long size = Files.size(file);
      if (size > LARGEST_BYTES) {
        throw tooLarge(photo, size);
      }
      return persistent(() -> whole(file), again, FIRST_PAUSE_MS);
    } catch (NoSuchFileException gone) {
      // Bytes that are no text show as these two; the file cannot be found by such a name.
      boolean odd = photo.indexOf('\uFFFD') >= 0 || photo.indexOf('?') >= 0;
      throw odd
          ? problem(
              photo,
              "the file's name, or its folder's, is not UTF-8 and cannot be opened",
              "rename it in plain letters and run again")
          : problem(photo, "the file is not there any more", "copy it from the camera again");
    } catch (AccessDeniedException denied) {
      throw problem(
          photo, "you have no right to read the file", "change its rights, then run again");
    } catch (IOException e) {
      throw problem(
          photo,
          "the file cannot be read: " + e.getMessage(),
          "check the card or drive and that you may read the file, then run again");
    }
  }

  /**
   * Says that a file is too large.
   *
   * @param photo its path as shown to the user
   * @param size its bytes
   * @return the problem
   */
  public static InputException tooLarge(String photo, long size) {
    return problem(
        photo,
        "the file has " + (size >> 20) + " MB, over the limit of " + (LARGEST_BYTES >> 20),
        "take it out of the folder: no photo is so large; a film is not read");
  }

  /** Reads again, after a pause, where the medium and not the file is at fault. */
  static byte[] persistent(Reader reader, Consumer<String> again, long firstPauseMs)
      throws IOException {
    long pauseMs = firstPauseMs;
    for (int left = TRIES - 1; ; left--) {
      try {
        return reader.read();
      } catch (NoSuchFileException | AccessDeniedException lasting) {
        throw lasting;
      } catch (IOException hiccup) {
        if (left == 0) {
          throw hiccup;
        }
        again.accept(hiccup.getMessage());
        pause(pauseMs, hiccup);
        pauseMs *= 2;
      }
    }
  }

  private static void pause(long ms, IOException why) throws IOException {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw why;
    }
  }

  private static byte[] whole(Path file) throws IOException {
    long size = Files.size(file);
    byte[] bytes = Files.readAllBytes(file);
    if (bytes.length < size) {
      throw new IOException("it gave " + bytes.length + " of its " + size + " bytes");
    }
    return bytes;
  }

  private static InputException problem(String photo, String found, String remedy) {
    return new InputException(List.of(new Problem(photo, found, remedy)));
  }
}
