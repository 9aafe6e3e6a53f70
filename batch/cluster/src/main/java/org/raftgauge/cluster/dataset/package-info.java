// SPDX-License-Identifier: Apache-2.0
/** A dataset on any file system or object store: what it holds is said by its newest commit. */
package org.raftgauge.cluster.dataset;
