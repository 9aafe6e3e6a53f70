// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import java.util.Optional;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.solid.Mesh;

/**
 * What a site holds.
 *
 * @param site the site
 * @param kind ok, lagging, pale, dead, empty or missing
 * @param plant the plant around its foot, unless the site is empty
 * @param plugged true: foam fills the hole
 */
public record Sown(SiteId site, String kind, Optional<Mesh> plant, boolean plugged) {}
