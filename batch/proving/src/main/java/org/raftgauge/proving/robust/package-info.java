// SPDX-License-Identifier: Apache-2.0
/**
 * Words what tests and tools left behind about broken input, fuzzing, mutation and dependencies:
 * catalogues of cases and reports in, Markdown out. Nothing is run here.
 */
package org.raftgauge.proving.robust;
