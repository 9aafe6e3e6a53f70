// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

/** A step after which the disk holds something that it did not hold before. */
public enum Step {
  /** A copy of a history of an older version is made. */
  COPY_OLD_HISTORY,
  /** Some photos' measures are committed. */
  SAVE_MEASURES,
  /** What counts, and the run, are committed. */
  SETTLE,
  /** A file of the run's folder is forced to the disk. */
  SYNC_FILE,
  /** A folder is forced to the disk. */
  SYNC_FOLDER,
  /** An earlier run's folder is renamed out of the way. */
  MOVE_EARLIER_ASIDE,
  /** The run's folder is renamed to its place. */
  MOVE_INTO_PLACE,
  /** An earlier run's folder is removed. */
  REMOVE_EARLIER,
  /** The history notes that the run is published. */
  NOTE_PUBLISHED,
  /** A backup of the history is written. */
  WRITE_BACKUP,
  /** A backup is renamed to its place. */
  MOVE_BACKUP,
  /** The last step is done. */
  ENDED
}
