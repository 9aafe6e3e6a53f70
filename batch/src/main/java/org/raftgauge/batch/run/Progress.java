// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

/** Told how a run gets on. */
public interface Progress {

  /**
   * Told once who else holds the book, while the run waits.
   *
   * @param holder who
   */
  void waitingFor(String holder);

  /**
   * Told when measuring starts.
   *
   * @param photos number of photos
   */
  void started(int photos);

  /**
   * Told after each photo that was measured, or could not be.
   *
   * @param photo its path
   */
  void done(String photo);

  /**
   * Told after each photo that an earlier run had measured.
   *
   * @param photo its path
   */
  void known(String photo);

  /**
   * Told before a photo's file is read again; called from any thread.
   *
   * @param photo its path
   * @param why what the card or drive said
   */
  void readAgain(String photo, String why);

  /**
   * Told where the program failed on a photo; called from any thread.
   *
   * @param photo its path
   * @param failure what was thrown
   */
  void failed(String photo, Throwable failure);

  /** Told when measuring has ended. */
  void finished();
}
