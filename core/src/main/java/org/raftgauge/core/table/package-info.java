// SPDX-License-Identifier: Apache-2.0
/**
 * Reads and writes the CSV files: RFC 4180, UTF-8, commas, a dot in numbers, ISO 8601 dates. {@link
 * org.raftgauge.core.table.CsvTable} reads a file with everything that is wrong with it; {@link
 * org.raftgauge.core.table.Cells} reads the cells of a row as what they should be; {@link
 * org.raftgauge.core.table.CsvWriter} writes. Every problem names file, line and column; the line
 * is the one on which the row begins.
 *
 * <p>Source: RFC 4180 (Shafranovich 2005). Differs from it: a byte order mark and any line end are
 * read, and blank lines are passed over.
 */
package org.raftgauge.core.table;
