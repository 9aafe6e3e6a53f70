// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/**
 * Why it is not known when a photo was taken.
 *
 * @param reason what is missing or wrong
 * @param remedy what the grower can do
 */
public record NoTime(String reason, String remedy) implements TimeResult {}
