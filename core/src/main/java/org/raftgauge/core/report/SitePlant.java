// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.OptionalDouble;
import org.raftgauge.core.book.Planting;

/**
 * What stands at a site when a photo is taken.
 *
 * @param planting the planting that holds the site
 * @param plant the plant's id
 * @param dat days after transplant (after sowing for a tray, after the cut for regrowth), where
 *     known
 */
public record SitePlant(Planting planting, String plant, OptionalDouble dat) {}
