// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

import org.raftgauge.core.leastsquares.Solved;

/** A curve that could be fitted, with its fit in working parameters. */
record Candidate(CurveModel model, Solved fit) {}
