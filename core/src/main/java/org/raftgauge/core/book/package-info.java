// SPDX-License-Identifier: Apache-2.0
/**
 * The crop book as checked records, read from the plain files that the grower keeps. In goes a
 * folder, out comes {@link org.raftgauge.core.book.BookReading}: the part of the {@link
 * org.raftgauge.core.book.CropBook} that can be used, and every problem with its file, line and
 * column, value found and remedy. What is wrong stops only what depends on it.
 *
 * <p>Plantings and events are played through once, in the order of time, so that the book can say
 * which planting stands on a raft ({@link org.raftgauge.core.book.Tenure}) and where each plant
 * stood ({@link org.raftgauge.core.book.PlantLife}). Days begin at the farm's hour ({@link
 * org.raftgauge.core.book.FarmDay}); days that end something are the first on which it is no longer
 * so. Lengths in mm of the board's frame, lens numbers in px, areas in cm2.
 *
 * <p>Every file, key, column, unit and default is explained for growers in {@code
 * batch/CROP-BOOK.md}, whose examples a test reads.
 */
package org.raftgauge.core.book;
