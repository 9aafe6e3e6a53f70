// SPDX-License-Identifier: Apache-2.0
/**
 * Sets of photos with their truth and a crop book: which conditions, crops, stages and stations,
 * how rafts are filled, and how everything is written. All data is invented; every set is a
 * function of its seed.
 */
package org.raftgauge.proving.set;
