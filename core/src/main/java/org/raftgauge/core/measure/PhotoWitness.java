// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.plane.CameraShift;
import org.raftgauge.core.plane.EdgeBlur;

/**
 * What a photo says of its camera, lens and lamps rather than of its plants; to be compared with
 * the same station's own past.
 *
 * @param shift how a fixed camera's picture lies against its reference photo, where found
 * @param blur how wide board edges are smeared
 * @param hazeFraction the darkest light of the photo over its white, 0..1: veiling light
 * @param light the light over the picture, where boards show it
 * @param pairRowsPx by how many px things lie lower in the second camera's rectified photo than in
 *     the first's; absent with one camera
 */
public record PhotoWitness(
    Optional<CameraShift> shift,
    EdgeBlur blur,
    OptionalDouble hazeFraction,
    Optional<LightField> light,
    OptionalDouble pairRowsPx) {

  /** Nothing known. */
  public static final PhotoWitness NONE =
      new PhotoWitness(
          Optional.empty(),
          new EdgeBlur(OptionalDouble.empty(), List.of()),
          OptionalDouble.empty(),
          Optional.empty(),
          OptionalDouble.empty());
}
