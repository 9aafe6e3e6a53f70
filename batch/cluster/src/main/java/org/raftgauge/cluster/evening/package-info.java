// SPDX-License-Identifier: Apache-2.0
/** Judges evenings in blocks: verdicts, growth curves, worklists, forecasts. */
package org.raftgauge.cluster.evening;
