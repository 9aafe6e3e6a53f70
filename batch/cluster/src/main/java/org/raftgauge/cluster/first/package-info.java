// SPDX-License-Identifier: Apache-2.0
/** The first pass: lists photos, deals them out by size, measures them in tasks, keeps rounds. */
package org.raftgauge.cluster.first;
