// SPDX-License-Identifier: Apache-2.0
/** The second pass: charts stations, settles groups of rafts, makes the rows of the reports. */
package org.raftgauge.cluster.second;
