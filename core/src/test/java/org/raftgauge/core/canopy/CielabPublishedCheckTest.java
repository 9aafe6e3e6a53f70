// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PublishedTable;
import org.raftgauge.core.pixels.Srgb;

/** CIELAB against the collected values of 17 colours, derived-matrix convention. */
@Tag("published")
class CielabPublishedCheckTest {

  @Test
  void codesBecomeTheCollectedLab() {
    for (Map<String, String> colour : PublishedTable.rows("iec-1999-srgb-to-lab.csv")) {
      Cielab lab = ofCodes(colour.get("R"), colour.get("G"), colour.get("B"));
      // 6 decimals are given; the matrix's own 8 decimals are multiplied by up to 500 * 7.787 for
      // dark colours: 2e-5.
      assertEquals(Double.parseDouble(colour.get("L")), lab.l(), 2e-5, colour.toString());
      assertEquals(Double.parseDouble(colour.get("a")), lab.a(), 2e-5, colour.toString());
      assertEquals(Double.parseDouble(colour.get("b")), lab.b(), 2e-5, colour.toString());
    }
  }

  @Test
  void greysHaveNoColour() {
    for (int code = 0; code < 256; code++) {
      Cielab lab = ofCodes("" + code, "" + code, "" + code);
      // 1e-6 asked for by the collection; the matrix's rows are rounded to 8 decimals.
      assertEquals(0, lab.a(), 1e-5, "code " + code);
      assertEquals(0, lab.b(), 1e-5, "code " + code);
    }
  }

  private static Cielab ofCodes(String r, String g, String b) {
    return Cielab.ofLinear(linear(r), linear(g), linear(b));
  }

  private static double linear(String code) {
    return Srgb.linear(Integer.parseInt(code) / 255.0);
  }
}
