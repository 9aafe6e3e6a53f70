// SPDX-License-Identifier: Apache-2.0
/**
 * What the screen at a station says after a photo: good, or what to do while the raft is still
 * there, as a shape, a word and a colour that fill a terminal and can be read across a room.
 */
package org.raftgauge.batch.screen;
