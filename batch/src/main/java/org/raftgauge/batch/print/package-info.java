// SPDX-License-Identifier: Apache-2.0
/**
 * Marks to print at true scale, as PDF (PDFBox): calibration targets, raft tags, corner markers,
 * each page with a ruler and a check line. Lengths in mm from a page's top left corner, y down.
 */
package org.raftgauge.batch.print;
