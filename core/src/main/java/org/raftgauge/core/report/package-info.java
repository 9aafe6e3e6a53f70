// SPDX-License-Identifier: Apache-2.0
/**
 * Rows and columns of each CSV report, and the only place where numbers are rounded. In: measures
 * with what the book says of each raft and plant. Out: the text of a file, RFC 4180 (CRLF), fixed
 * column order, the same text for the same rows. Columns are promised: they are appended, never
 * renamed or moved.
 */
package org.raftgauge.core.report;
