// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import org.raftgauge.core.book.Layout;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.EvenedLight;
import org.raftgauge.core.canopy.EvenedPixels;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.canopy.OpenGround;
import org.raftgauge.core.canopy.SegmentCanopy;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DeckImage;

/**
 * A board of a photo as colour models see it.
 *
 * @param layout its layout
 * @param pose where the camera stood
 * @param deck its deck picture
 * @param light the light on it
 * @param openGround whether no board is seen there
 */
public record LitBoard(
    Layout layout, CameraPose pose, DeckImage deck, EvenedLight light, boolean openGround) {

  /** Returns its pixels in evened light. */
  public EvenedPixels pixels() {
    return openGround ? EvenedPixels.ofGround(deck) : EvenedPixels.ofBoard(deck, light);
  }

  /**
   * Decides by one colour model what of it is leaf, as measuring does.
   *
   * @param model the model
   * @return the canopy
   */
  public Canopy canopy(LeafModel model) {
    return openGround
        ? OpenGround.on(deck, place -> model)
        : SegmentCanopy.on(deck, layout, light, place -> model);
  }
}
