// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * What one photo says of one raft.
 *
 * @param raft the raft's id; empty where nothing told it (unassigned)
 * @param slot the slot it lay in, or empty
 * @param layout name of its layout
 * @param poseSource what its place was found from
 * @param poseErrorMm standard error of a place on its deck, mm
 * @param mmPerPx deck mm per photo px at the board's centre
 * @param cameraHeightMm height of the camera over its deck plane, mm
 * @param halfTurnKnown whether the picture itself tells its origin end
 * @param canopyCover visible canopy inside the board's edge over board area, 0..1; absent where
 *     held
 * @param leftoverCanopyCm2 canopy that no site can own, cm2; absent where held
 * @param sites its sites in order, planted or not
 * @param quality 0 (useless) to 1
 * @param held why the whole raft is held, or empty
 */
public record RaftMeasure(
    Optional<String> raft,
    String slot,
    String layout,
    PoseSource poseSource,
    double poseErrorMm,
    double mmPerPx,
    double cameraHeightMm,
    boolean halfTurnKnown,
    OptionalDouble canopyCover,
    OptionalDouble leftoverCanopyCm2,
    List<SiteMeasure> sites,
    double quality,
    String held) {

  /** Copies the sites. */
  public RaftMeasure {
    sites = List.copyOf(sites);
  }
}
