// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

/** What came of fitting a cohort: its curve, or why there is none. */
public sealed interface CohortFit permits CohortCurve, NoCohortCurve {}
