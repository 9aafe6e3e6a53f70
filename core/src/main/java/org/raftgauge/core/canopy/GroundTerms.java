// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.TaughtGround;
import org.raftgauge.core.plane.DeckImage;

/**
 * What a taught model weighs at pixels of open ground, for teaching; all but what it makes of the
 * colour, which the teacher writes in the last place.
 */
public final class GroundTerms {

  private GroundTerms() {}

  /**
   * Looks at pixels of a deck picture.
   *
   * @param deck the picture
   * @param pixels y * width + x of pixels that the photo shows, none twice
   * @return {@link TaughtGround#TERMS} terms of each, the last 0
   */
  public static float[][] of(DeckImage deck, int[] pixels) {
    float[][] terms = new float[pixels.length][];
    if (pixels.length == 0) {
      return terms;
    }
    SeenBox box = SeenBox.of(deck);
    boolean[] wanted = new boolean[box.width() * box.height()];
    int[] places = new int[wanted.length];
    for (int n = 0; n < pixels.length; n++) {
      int x = pixels[n] % deck.image().width() - box.left();
      int y = pixels[n] / deck.image().width() - box.top();
      wanted[y * box.width() + x] = true;
      places[y * box.width() + x] = n;
    }
    GroundEvidence evidence = OpenGround.of(box).evidence();
    new GroundSurroundings(box, evidence, new float[wanted.length])
        .each(wanted, (i, seen) -> terms[places[i]] = seen.clone());
    return terms;
  }
}
