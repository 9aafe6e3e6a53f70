// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.SiteMeasure;

/** Names the sites of a measured raft from its other end. */
final class TurnRaft {

  private TurnRaft() {}

  /** Returns the raft with each site's measure at the site opposite. */
  static RaftMeasure half(RaftMeasure raft) {
    List<SiteMeasure> sites = raft.sites();
    List<SiteMeasure> turned = new ArrayList<>();
    Map<SiteId, SiteId> opposite = new HashMap<>();
    for (int i = 0; i < sites.size(); i++) {
      SiteMeasure other = sites.get(sites.size() - 1 - i);
      turned.add(at(sites.get(i).site(), other));
      opposite.put(other.site(), sites.get(i).site());
    }
    List<Border> borders =
        raft.borders().stream()
            .map(b -> b.between(opposite.get(b.site()), opposite.get(b.neighbour())))
            .toList();
    return raft.with(
        new RaftMeasure.Sites(raft.canopyCover(), raft.leftoverCanopyCm2(), turned, borders),
        raft.held());
  }

  private static SiteMeasure at(SiteId site, SiteMeasure opposite) {
    return new SiteMeasure(
        site,
        opposite.projectedAreaCm2(),
        opposite.projectedAreaSeCm2(),
        opposite.visibleAreaCm2(),
        opposite.closed(),
        opposite.sharedOutlineFraction(),
        opposite.heightMm(),
        opposite.parallaxFactor(),
        opposite.shape().stream().map(TurnRaft::turned).toList(),
        opposite.colour(),
        opposite.quality(),
        opposite.held(),
        opposite.relief(),
        opposite.movedCm2());
  }

  private static SiteMeasure.Shape turned(SiteMeasure.Shape shape) {
    return new SiteMeasure.Shape(
        shape.equivalentDiameterMm(),
        shape.largestDiameterMm(),
        shape.perimeterMm(),
        shape.solidity(),
        -shape.offsetXMm(),
        -shape.offsetYMm());
  }
}
