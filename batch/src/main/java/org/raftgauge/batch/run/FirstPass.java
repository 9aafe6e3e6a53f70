// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;

/**
 * The photos after the first pass.
 *
 * @param photos one for each file, in order of their paths
 * @param clock times the run
 */
record FirstPass(List<Measured> photos, RunClock clock) {}
