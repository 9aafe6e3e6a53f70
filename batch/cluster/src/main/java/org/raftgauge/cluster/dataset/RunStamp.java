// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.dataset;

/**
 * Which run writes.
 *
 * @param run its id, which no other run has
 * @param startedAt when it was asked for, ISO 8601
 * @param version of the program
 * @param code hash of the measuring program
 */
public record RunStamp(String run, String startedAt, String version, String code) {}
