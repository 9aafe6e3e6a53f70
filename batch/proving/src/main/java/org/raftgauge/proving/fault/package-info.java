// SPDX-License-Identifier: Apache-2.0
/**
 * Renders the evenings of a fixed station, with and without something wrong with it, measures them
 * and scores what the station check says: recall and delay beside false alarms.
 *
 * <p>The rules of the check were chosen before the faults of the published page were drawn;
 * strengths of scatter and faults are invented, by eye.
 */
package org.raftgauge.proving.fault;
