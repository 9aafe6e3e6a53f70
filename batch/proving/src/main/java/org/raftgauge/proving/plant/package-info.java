// SPDX-License-Identifier: Apache-2.0
/**
 * Grows plants of several leaf habits as triangle meshes, from a wanted projected area and a seed.
 * Lengths in mm, areas in cm2. The shapes are our own, drawn from how the crops look; no measured
 * plant stands behind them.
 */
package org.raftgauge.proving.plant;
