// SPDX-License-Identifier: Apache-2.0
/**
 * Triangle meshes of plants and things on a raft, in mm: x and y on the deck plane, z up. Every
 * triangle belongs to a patch (one leaf, one petiole, one hose) that says whose it is and how it
 * looks.
 */
package org.raftgauge.proving.solid;
