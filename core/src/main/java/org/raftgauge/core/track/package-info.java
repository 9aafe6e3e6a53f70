// SPDX-License-Identifier: Apache-2.0
/**
 * Says how sites, rafts, ponds and stations stand on an evening ({@link
 * org.raftgauge.core.track.JudgeEvening}): series of areas in, verdicts with their evidence out.
 * Areas in cm2, ages in days, rates per day of ln(area), shares of the expected area as plain
 * ratios. Each plant is followed by a local linear trend filter on ln(share of expected); the
 * expected is the robust middle of the cohort's other rafts. Stations are told from plants by steps
 * common to all sizes. Nothing later than the evening is looked at.
 */
package org.raftgauge.core.track;
