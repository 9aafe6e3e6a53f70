// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/**
 * No curve was fitted.
 *
 * @param reason why not, for a reader
 */
public record NotFitted(String reason) implements GrowthFit {}
