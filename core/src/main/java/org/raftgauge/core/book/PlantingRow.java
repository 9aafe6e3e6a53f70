// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/** A planting with its line in {@code plantings.csv}. */
record PlantingRow(int line, Planting planting) {}
