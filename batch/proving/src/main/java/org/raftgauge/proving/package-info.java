// SPDX-License-Identifier: Apache-2.0
/** Renders raft photos with exact truth and scores the measurement against them. */
package org.raftgauge.proving;
