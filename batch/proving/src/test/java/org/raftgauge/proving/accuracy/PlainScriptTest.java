// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.set.Boards;

final class PlainScriptTest {

  @Test
  void aGreenSquareOnTheDeckIsMeasuredAtItsArea() {
    Layout layout = Boards.named("deck-18");
    Lens lens = new Lens(1000, 1000, 349.5, 649.5, 0, 0, 0, 0, 0);
    Camera camera = new Camera(lens, 700, 1300, new Hold(300, 600, 1000, 0, 0, 0));
    BufferedImage photo = new BufferedImage(700, 1300, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = photo.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, 700, 1300);
    pen.setColor(new Color(90, 160, 40));
    double[] centre = camera.project(300, 340, 0);
    pen.fillRect((int) centre[0] - 29, (int) centre[1] - 29, 60, 60);
    pen.dispose();
    Map<SiteId, Double> areas = PlainScript.areasCm2(photo, camera, layout);
    // 60 px at 1 mm/px, about site B2: 6 cm * 6 cm; a row of pixels may fall either way
    assertEquals(36, areas.get(SiteId.parse("B2")), 1.3);
    assertEquals(1, areas.size());
  }
}
