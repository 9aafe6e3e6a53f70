// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The transfer curve and luminance against the collected values of 17 colours. */
@Tag("published")
class SrgbPublishedCheckTest {
  /** Half a unit of the eighth decimal. */
  private static final double DIGITS = 5.1e-9;

  private static final List<Map<String, String>> COLOURS =
      PublishedTable.rows("iec-1999-srgb-to-lab.csv");

  @Test
  void codesBecomeTheCollectedLinearLight() {
    assertEquals(17, COLOURS.size());
    for (Map<String, String> colour : COLOURS) {
      for (String channel : List.of("R", "G", "B")) {
        int code = Integer.parseInt(colour.get(channel));
        double linear = Double.parseDouble(colour.get("lin" + channel));
        assertEquals(linear, Srgb.linear(code / 255.0), DIGITS, colour.toString());
        // The table for whole photos holds floats: 24 bits.
        assertEquals(linear, Srgb.linear((byte) code), 6e-8, colour.toString());
      }
    }
  }

  @Test
  void luminanceIsTheCollectedY() {
    for (Map<String, String> colour : COLOURS) {
      double y =
          Srgb.luminance(
              Double.parseDouble(colour.get("linR")),
              Double.parseDouble(colour.get("linG")),
              Double.parseDouble(colour.get("linB")));
      // Half a unit each of Y, of the inputs and of the matrix's three entries.
      assertEquals(Double.parseDouble(colour.get("Y")), y, 5 * DIGITS, colour.toString());
    }
  }

  @Test
  void codingIsTheInverseOfLinearLight() {
    for (int code = 0; code < 256; code++) {
      double coded = code / 255.0;
      // The standard's two breaks, 0.04045 and 0.0031308, are rounded; no code lies between them.
      assertEquals(coded, Srgb.coded(Srgb.linear(coded)), 1e-12);
    }
  }

  @Test
  void lightRisesWithTheCodeAlsoPastTheEndOfTheStraightPart() {
    for (int code = 1; code < 256; code++) {
      assertTrue(Srgb.linear((byte) code) > Srgb.linear((byte) (code - 1)), "code " + code);
    }
  }
}
