// SPDX-License-Identifier: Apache-2.0
/**
 * Makes farms of very many sites, without pictures, and measures how long an evening's analysis
 * takes: reading the history, verdicts, curves, forecasts, tables. Everything is invented; sizes in
 * sites, times in seconds, memory in megabytes.
 */
package org.raftgauge.proving.scale;
