// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Words why a command failed; the file system's own exceptions often say no more than a path. */
final class FailureText {

  private FailureText() {}

  static String of(Exception e) {
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile()
          + ": you have no right to it; change its rights, or use another folder";
    }
    if (e instanceof NoSuchFileException missing) {
      return missing.getFile() + ": is not there (any more); look for its drive or folder";
    }
    if (e instanceof FileSystemException other && other.getReason() != null) {
      return other.getFile() + ": " + other.getReason() + remedy(other.getReason());
    }
    if (e instanceof FileNotFoundException shut && shut.getMessage() != null) {
      return ofStream(shut.getMessage());
    }
    return e instanceof IOException && e.getMessage() != null
        ? e.getMessage() + (e.getMessage().contains(";") ? "" : remedy(e.getMessage()))
        : e.toString();
  }

  /** Words a stream's failure, which is the path and the system's reason in brackets. */
  private static String ofStream(String message) {
    int end = message.lastIndexOf(" (");
    String path = end < 0 ? message : message.substring(0, end);
    if (message.endsWith("denied)")) {
      return of(new AccessDeniedException(path));
    }
    return message.endsWith("(No such file or directory)")
        ? of(new NoSuchFileException(path))
        : message + remedy(message);
  }

  private static String remedy(String reason) {
    if (reason.contains("No space") || reason.contains("not enough space")) {
      return "; free some space on the disks of OUT and BOOK and run again";
    }
    return reason.contains("Read-only") ? "; use a folder that can be written" : "";
  }
}
