// SPDX-License-Identifier: Apache-2.0
/** Records and reports as rows of typed columns, and back. */
package org.raftgauge.cluster.rows;
