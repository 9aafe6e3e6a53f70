// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A board, its planting holes and what is fixed to it, all in mm of the board's frame.
 *
 * @param name as the book names it
 * @param from the first day this version holds, where the book dates it (a re-drilled board is a
 *     new version)
 * @param board its size
 * @param grid its planting holes
 * @param markers its corner markers, where it has them
 * @param tag its QR tag, where it has one
 * @param orientationMark a mark that settles half a turn, where it has one
 */
public record Layout(
    String name,
    Optional<LocalDate> from,
    Board board,
    SiteGrid grid,
    Optional<CornerMarkers> markers,
    Optional<TagPlace> tag,
    Optional<OrientationMark> orientationMark) {}
