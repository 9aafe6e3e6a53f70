// SPDX-License-Identifier: Apache-2.0
/**
 * The page that people read of a run. In: a {@link org.raftgauge.batch.report.ReportInput} (what
 * the run has to show, with verdicts, worklist and forecast as far as there are any). Between: a
 * {@link org.raftgauge.batch.report.ReportModel}, all texts ready to be shown. Out: {@code
 * report.html}, one file with its style and script in it, and {@code plots/} beside it; board
 * pictures and overlays are linked. The same input gives the same bytes; nothing is fetched.
 */
package org.raftgauge.batch.report;
