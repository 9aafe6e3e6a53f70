// SPDX-License-Identifier: Apache-2.0
/**
 * The camera of the proving ground: a pinhole with Brown-Conrady distortion, held somewhere over
 * the deck. Lengths in mm, pictures in px, integer coordinates at pixel centres.
 */
package org.raftgauge.proving.camera;
