// SPDX-License-Identifier: Apache-2.0
/**
 * Finds the photos below a folder: by name only, nothing is opened. The order is the same on every
 * machine.
 */
package org.raftgauge.batch.folder;
