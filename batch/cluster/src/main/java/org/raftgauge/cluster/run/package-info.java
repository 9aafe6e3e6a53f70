// SPDX-License-Identifier: Apache-2.0
/** A run on a cluster from photos to a published dataset; export and import. */
package org.raftgauge.cluster.run;
