// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import org.raftgauge.core.measure.PhotoStatus;

/**
 * What is said of a photo.
 *
 * @param status what became of it
 * @param reason why, or empty
 * @param remedy what to do, or empty
 */
record Say(PhotoStatus status, String reason, String remedy) {}
