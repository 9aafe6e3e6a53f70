// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

/** Says how much a problem stops. */
public enum Severity {
  /** What depends on it cannot be used. */
  ERROR,
  /** Everything can be used, but something is probably not what was meant. */
  WARNING
}
