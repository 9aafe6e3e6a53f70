// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.canopy.EvenedLight;
import org.raftgauge.core.canopy.LightSource;
import org.raftgauge.core.plane.FoundBoard;

/**
 * Lends the light of a board that shows its surface to boards of the same photo that canopy has
 * closed over.
 */
final class SharedLight {

  private SharedLight() {}

  /** Evens the light on each board, in order; held boards have none. */
  static List<Optional<MeasureBoard.Lit>> among(List<FoundBoard> boards, MeasureBoard measure) {
    List<Optional<MeasureBoard.Lit>> lit = boards.stream().map(measure::light).toList();
    Optional<EvenedLight> lender =
        lit.stream()
            .flatMap(Optional::stream)
            .map(MeasureBoard.Lit::light)
            .filter(l -> l.source() == LightSource.BOARD)
            .findFirst();
    return lit.stream().map(l -> l.map(own -> lent(own, lender))).toList();
  }

  private static MeasureBoard.Lit lent(MeasureBoard.Lit own, Optional<EvenedLight> lender) {
    boolean needs =
        own.light().source() == LightSource.CAMERA && own.light().greenStarvation() <= 0;
    return needs && lender.isPresent()
        ? new MeasureBoard.Lit(own.board(), own.deck(), lender.get())
        : own;
  }
}
