// SPDX-License-Identifier: Apache-2.0
/** Paints a farm and compares engines on it. */
package org.raftgauge.cluster.show;
