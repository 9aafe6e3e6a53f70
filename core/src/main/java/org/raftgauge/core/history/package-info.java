// SPDX-License-Identifier: Apache-2.0
/**
 * What a site's measure belongs to: the plant that stood there and its age ({@link
 * org.raftgauge.core.history.WhoGrewWhere}), which photo of an evening counts ({@link
 * org.raftgauge.core.history.EveningRule}), and which way round a board lay ({@link
 * org.raftgauge.core.history.HalfTurn} for two looks, {@link
 * org.raftgauge.core.history.SettleTurns} for all looks of a raft). Plain data in and out; ages are
 * calendar days with the local clock as a fraction, areas cm2.
 */
package org.raftgauge.core.history;
