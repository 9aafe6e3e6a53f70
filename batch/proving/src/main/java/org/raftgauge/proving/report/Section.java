// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

/**
 * A part of the accuracy page.
 *
 * @param title its heading
 * @param body Markdown: what was measured, and its tables
 * @param summary Markdown for the README: rows of its table (see {@link SummaryRows})
 */
public record Section(String title, String body, String summary) {
  /** Returns the same with words before its body. */
  public Section begun(String words) {
    return new Section(title, words + body, summary);
  }
}
