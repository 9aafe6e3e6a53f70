// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

/** What the program tells the shell. */
final class ExitCode {
  /** Done: the run is published, or the check found nothing. */
  static final int DONE = 0;

  /** The call, the book or the folder is wrong; nothing was written. */
  static final int WRONG_INPUT = 2;

  /** It failed; a run has published nothing then. */
  static final int FAILED = 3;

  private ExitCode() {}
}
