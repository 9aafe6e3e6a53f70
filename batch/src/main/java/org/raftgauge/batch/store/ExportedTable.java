// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

/**
 * A table of an exported history.
 *
 * @param table its name; the file is named so, with {@code .csv}
 * @param rows their number
 * @param sha256 of the file's bytes
 */
public record ExportedTable(String table, long rows, String sha256) {}
