// SPDX-License-Identifier: Apache-2.0
/**
 * The report of a watch in a browser on the same machine, where rows of the worklist are marked by
 * a click. Listens on the loopback address only; in: the folder of a published run and the book;
 * out: its files, and rows in the book's {@code seen.csv}.
 */
package org.raftgauge.batch.desk;
