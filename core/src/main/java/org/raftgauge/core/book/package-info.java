// SPDX-License-Identifier: Apache-2.0
/**
 * The crop book as checked records: stations, layouts, crops, plantings, placements and events,
 * read from the plain files that the grower keeps. Lengths in mm of the board's frame, lens numbers
 * in px.
 */
package org.raftgauge.core.book;
