// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

/**
 * A calibration that did not work out.
 *
 * @param reason why, and what to do
 */
public record NoLens(String reason) implements LensResult {}
