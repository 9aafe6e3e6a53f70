// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * When a tray of young plants is ready to be transplanted.
 *
 * @param areaCm2 area that a plant needs, cm2, above 0
 * @param share share of the planted cells that need to have it, above 0 to 1
 */
public record TransplantRule(double areaCm2, double share) {}
