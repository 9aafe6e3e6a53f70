// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

/** What comes of fitting a grader. */
public sealed interface GraderResult permits Grader, GraderResult.NotFitted {

  /**
   * No grader.
   *
   * @param reason why, in words, with the remedy
   */
  record NotFitted(String reason) implements GraderResult {}
}
