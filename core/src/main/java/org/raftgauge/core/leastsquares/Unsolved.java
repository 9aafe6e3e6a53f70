// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/**
 * A fit that did not work out.
 *
 * @param reason what went wrong, for a reader
 */
public record Unsolved(String reason) implements FitOutcome {}
