// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/** What came of a fit: parameters with their uncertainty, or why there are none. */
public sealed interface FitOutcome permits Solved, Unsolved {}
