// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.plane.DeckImage;

/**
 * What the second look at open ground weighs at each pixel of a deck picture, for teaching; all but
 * what a taught colour model makes of the colour, which the teacher adds last.
 */
public final class GroundTerms {
  private final SeenBox box;
  private final GroundEvidence evidence;

  private GroundTerms(SeenBox box, GroundEvidence evidence) {
    this.box = box;
    this.evidence = evidence;
  }

  /**
   * Looks at a deck picture.
   *
   * @param deck the picture; the photo must show some of it
   * @return its terms
   */
  public static GroundTerms of(DeckImage deck) {
    SeenBox box = SeenBox.of(deck);
    if (box.isEmpty()) {
      throw new IllegalArgumentException("the photo shows nothing of the deck");
    }
    return new GroundTerms(box, OpenGround.of(box).evidence(new float[box.width() * box.height()]));
  }

  /**
   * Returns the terms of a pixel that the photo shows.
   *
   * @param x column of the deck picture
   * @param y row of the deck picture
   * @return {@link TaughtColour#GROUND_TERMS} less one terms, the first is 1
   */
  public double[] at(int x, int y) {
    double[] terms = new double[TaughtColour.GROUND_TERMS];
    evidence.at((y - box.top()) * box.width() + x - box.left(), terms);
    return Arrays.copyOf(terms, terms.length - 1);
  }
}
