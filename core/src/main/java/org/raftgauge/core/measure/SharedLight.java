// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Comparator;
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

  /** A board under this share of another's brightness may be no board. */
  private static final double DARKER = 0.4;

  /** Boards under one light agree in ln(R/G) and ln(B/G) to better than this. */
  private static final double OTHER_COLOUR = 0.12;

  private SharedLight() {}

  /** Evens the light on each board, in order; held boards have none. */
  static List<Optional<MeasureBoard.Lit>> among(List<FoundBoard> boards, MeasureBoard measure) {
    List<Optional<MeasureBoard.Lit>> lit = boards.stream().map(measure::light).toList();
    Optional<EvenedLight> lender =
        lit.stream()
            .flatMap(Optional::stream)
            .map(MeasureBoard.Lit::light)
            .filter(l -> l.source() == LightSource.BOARD)
            .max(Comparator.comparingDouble(EvenedLight::boardGreen));
    return lit.stream().map(l -> l.map(own -> lent(own, lender))).toList();
  }

  private static MeasureBoard.Lit lent(MeasureBoard.Lit own, Optional<EvenedLight> lender) {
    return lender.isPresent() && needs(own.light(), lender.get())
        ? new MeasureBoard.Lit(own.board(), own.deck(), lender.get())
        : own;
  }

  /**
   * Says whether a board shows no surface of its own: none was found, or what was taken for it is
   * both much darker than another board of the photo and of another colour, as a closed canopy of
   * red leaf is.
   */
  private static boolean needs(EvenedLight own, EvenedLight lender) {
    boolean bare = own.source() == LightSource.CAMERA && own.greenStarvation() <= 0;
    boolean darker = own.boardGreen() < DARKER * lender.boardGreen();
    return bare || (darker && own.balanceFrom(lender) > OTHER_COLOUR);
  }
}
