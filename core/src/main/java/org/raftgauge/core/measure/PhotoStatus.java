// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

/** What became of a photo. */
public enum PhotoStatus {
  /** Measured, and it counts. */
  USED,
  /** Measured on an earlier run: the same bytes. */
  KNOWN,
  /** Measured, but another photo of the same raft and evening is better. */
  REPLACED,
  /** Kept, not measured until someone settles a doubt. */
  HELD,
  /** Passed over without alarm, as a frame taken in the dark. */
  SKIPPED,
  /** Not usable; to be taken again or mended. */
  REFUSED
}
