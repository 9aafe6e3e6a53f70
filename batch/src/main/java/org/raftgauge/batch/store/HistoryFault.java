// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;

/** Words what is wrong with a history file, and the remedy where one is known. */
final class HistoryFault {
  // Primary result codes, https://www.sqlite.org/rescode.html
  private static final int ERROR = 1;
  private static final int BUSY = 5;
  private static final int READ_ONLY = 8;
  private static final int IO_ERROR = 10;
  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANNOT_OPEN = 14;
  private static final int NOT_A_DATABASE = 26;

  private HistoryFault() {}

  static String text(Path file, Exception failure) {
    String text = file + ": " + failure.getMessage();
    return failure instanceof SQLException sql
        ? text + remedy(file, sql.getErrorCode() & 0xff)
        : text;
  }

  private static String remedy(Path file, int code) {
    return switch (code) {
      case CORRUPT, NOT_A_DATABASE -> "; the file is damaged: " + putBack(file);
      case READ_ONLY, CANNOT_OPEN ->
          "; see that it is a file, and give yourself the right to write it and its folder";
      case FULL -> "; free some space on the disk and run again";
      case IO_ERROR -> "; see that the disk is there and not full, then run again";
      case ERROR -> "; it is no history of this program, or lacks a part of one: " + putBack(file);
      case BUSY -> "; another program has it open: close that and run again";
      default -> "";
    };
  }

  /** Says how to go on from a damaged file. */
  static String putBack(Path file) {
    Optional<Path> latest = latest(file);
    return latest.isPresent()
        ? "move it away, copy the backup "
            + latest.get()
            + " to its place, and run again over the photos taken since"
        : "put back a copy of it, or move it"
            + " away, then the next run makes a new one, without what was measured before, and"
            + " measures again the photos that you give it";
  }

  private static Optional<Path> latest(Path file) {
    try {
      return Backups.beside(file).latest();
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
