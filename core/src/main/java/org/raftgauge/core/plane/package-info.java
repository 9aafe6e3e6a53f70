// SPDX-License-Identifier: Apache-2.0
/**
 * Lens and raft geometry: from corners in photo pixels to the camera's pose over the board, and
 * between photo pixels and deck millimetres. World frame: x along columns, y along rows, z up from
 * the deck, mm.
 */
package org.raftgauge.core.plane;
