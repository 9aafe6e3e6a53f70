// SPDX-License-Identifier: Apache-2.0
/**
 * Begins a crop book: from a few answers (board, holes, camera, crop) to a folder of commented
 * files that can be checked, run by, and edited. Lengths in mm.
 */
package org.raftgauge.batch.begin;
