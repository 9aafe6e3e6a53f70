// SPDX-License-Identifier: Apache-2.0
/**
 * Sheets as PDF (PDFBox): calibration targets, raft tags and corner markers at true scale, with a
 * ruler and a check line; the worklist. Lengths in mm from a page's top left corner, y down.
 */
package org.raftgauge.batch.print;
