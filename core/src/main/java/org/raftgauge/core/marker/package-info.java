// SPDX-License-Identifier: Apache-2.0
/**
 * Finds corner markers (AprilTag 36h11) and raft tags (QR codes) in a photo: numbers or text and
 * four corners in photo px, clockwise from the mark's own top left, integer coordinates at pixel
 * centres. Corners are intersections of lines fitted to the edges in linear light, so that they sit
 * on the true corner whatever the blur.
 */
package org.raftgauge.core.marker;
