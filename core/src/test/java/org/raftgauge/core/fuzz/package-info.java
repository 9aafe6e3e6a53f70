// SPDX-License-Identifier: Apache-2.0
/**
 * Targets for coverage-guided fuzzing of what reads files and labels: any bytes in, no exception
 * out, and every problem a line of place, finding and remedy. {@code core/fuzz} runs them;
 * FuzzCorpusTest replays the corpus of {@code src/test/resources/fuzz}.
 */
package org.raftgauge.core.fuzz;
