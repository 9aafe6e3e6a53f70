// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.nio.file.Path;
import java.sql.SQLException;

/** Words what is wrong with a history file, and the remedy where one is known. */
final class HistoryFault {
  // Primary result codes, https://www.sqlite.org/rescode.html
  private static final int ERROR = 1;
  private static final int BUSY = 5;
  private static final int READ_ONLY = 8;
  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANNOT_OPEN = 14;
  private static final int NOT_A_DATABASE = 26;

  private HistoryFault() {}

  static String text(Path file, Exception failure) {
    String text = file + ": " + failure.getMessage();
    return failure instanceof SQLException sql ? text + remedy(sql.getErrorCode() & 0xff) : text;
  }

  private static String remedy(int code) {
    return switch (code) {
      case CORRUPT, NOT_A_DATABASE ->
          "; the file is damaged: put back a copy of it, or move it"
              + " away, then the next run makes a new one, without what was measured before, and"
              + " measures again the photos that you give it";
      case READ_ONLY, CANNOT_OPEN ->
          "; see that it is a file, and give yourself the right to write it and its folder";
      case FULL -> "; free some space on the disk and run again";
      case ERROR ->
          "; it is no history of this program, or lacks a part of one: put back a copy of it, or move"
              + " it away, then the next run makes a new one";
      case BUSY -> "; another program has it open: close that and run again";
      default -> "";
    };
  }
}
