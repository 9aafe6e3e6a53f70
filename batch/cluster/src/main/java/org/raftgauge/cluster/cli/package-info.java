// SPDX-License-Identifier: Apache-2.0
/** The command line on Apache Spark; the only place that speaks. */
package org.raftgauge.cluster.cli;
