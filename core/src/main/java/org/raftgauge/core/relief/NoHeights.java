// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

/**
 * Heights that could not be told.
 *
 * @param reason why, in words
 * @param remedy what to do
 */
public record NoHeights(String reason, String remedy) implements Heights {}
