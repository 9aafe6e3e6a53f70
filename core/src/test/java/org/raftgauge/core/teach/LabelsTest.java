// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.pixels.RgbImage;

class LabelsTest {

  /** Paints a picture of the colours given, row by row. */
  static RgbImage picture(int width, int... colours) {
    byte[] rgb = new byte[3 * colours.length];
    for (int i = 0; i < colours.length; i++) {
      rgb[3 * i] = (byte) (colours[i] >> 16);
      rgb[3 * i + 1] = (byte) (colours[i] >> 8);
      rgb[3 * i + 2] = (byte) colours[i];
    }
    return RgbImage.of(width, colours.length / width, rgb);
  }

  @Test
  void everyColourOfThePaletteIsItsTissue() {
    for (Tissue tissue : Tissue.values()) {
      Labels labels = Labels.read(picture(1, tissue.rgb()));
      assertEquals(Optional.of(tissue), labels.at(0, 0));
      assertEquals(0, labels.unknownFraction());
    }
    assertEquals(Optional.empty(), Labels.read(picture(1, Labels.IGNORE_RGB)).at(0, 0));
  }

  @Test
  void coloursOfThePaletteAreFarApart() {
    for (Tissue a : Tissue.values()) {
      assertTrue(Labels.apart(a.rgb(), Labels.IGNORE_RGB) > 75, a.label());
      for (Tissue b : Tissue.values()) {
        assertTrue(a == b || Labels.apart(a.rgb(), b.rgb()) > 75, a + " " + b);
      }
    }
  }

  @Test
  void aColourNearOneOfThePaletteCountsAsIt() {
    assertEquals(Optional.of(Tissue.GREEN), Labels.read(picture(1, 0x14B030)).at(0, 0));
    Labels odd = Labels.read(picture(2, 0x7F7F7F, Tissue.GREEN.rgb()));
    assertEquals(Optional.empty(), odd.at(0, 0));
    assertEquals(0.5, odd.unknownFraction());
  }

  @Test
  void magentaIsLeftOutButKnown() {
    assertEquals(0, Labels.read(picture(1, Labels.IGNORE_RGB)).unknownFraction());
  }

  @Test
  void outsideThePictureNothingIsPainted() {
    Labels labels = Labels.read(picture(1, Tissue.RED.rgb()));
    assertEquals(Optional.empty(), labels.at(1, 0));
    assertEquals(Optional.empty(), labels.at(0, -1));
  }

  @Test
  void aPixelIsInnerWhereItsNeighboursArePaintedAlike() {
    int g = Tissue.GREEN.rgb();
    int b = Tissue.BOARD.rgb();
    Labels labels = Labels.read(picture(4, g, g, g, b, g, g, g, b, g, g, g, b));
    assertTrue(labels.isInner(1, 1));
    assertFalse(labels.isInner(2, 1), "beside board");
    assertFalse(labels.isInner(1, 0), "at the rim");
  }
}
