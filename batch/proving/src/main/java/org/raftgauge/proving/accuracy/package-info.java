// SPDX-License-Identifier: Apache-2.0
/**
 * Scores a run's {@code sites.csv} against the truth of a rendered set, and a plain script beside
 * it. Works on files only: areas in cm2 in, relative errors as shares (0.02 is 2 %) out.
 */
package org.raftgauge.proving.accuracy;
