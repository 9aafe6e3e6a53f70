// SPDX-License-Identifier: Apache-2.0
/**
 * Makes the accuracy page: runs the program over each set of photos with known truth, scores it,
 * and writes {@code ACCURACY.md} and the README's table. Each set is a {@link
 * org.raftgauge.proving.report.Section}; a new one is a line in {@link
 * org.raftgauge.proving.report.Sections}.
 */
package org.raftgauge.proving.report;
