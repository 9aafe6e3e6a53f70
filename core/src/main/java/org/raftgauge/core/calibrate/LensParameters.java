// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.Set;
import org.raftgauge.core.book.Lens;

/** Which numbers of a lens a fit may move: {@code fx fy cx cy k1 k2 p1 p2 k3} by place. */
final class LensParameters {
  private static final int ALL = 9;
  private static final LensTerm[] TERM = {
    null, LensTerm.FY, null, null, LensTerm.K1, LensTerm.K2, LensTerm.P1, LensTerm.P2, LensTerm.K3
  };

  private final int[] free;
  private final boolean squarePixels;

  LensParameters(Set<LensTerm> terms) {
    int[] places = new int[ALL];
    int n = 0;
    for (int i = 0; i < ALL; i++) {
      if (TERM[i] == null || terms.contains(TERM[i])) {
        places[n++] = i;
      }
    }
    free = java.util.Arrays.copyOf(places, n);
    squarePixels = !terms.contains(LensTerm.FY);
  }

  int count() {
    return free.length;
  }

  /** Returns the free numbers of a lens. */
  double[] of(Lens lens) {
    double[] all = {
      lens.fxPx(),
      lens.fyPx(),
      lens.cxPx(),
      lens.cyPx(),
      lens.k1(),
      lens.k2(),
      lens.p1(),
      lens.p2(),
      lens.k3()
    };
    double[] values = new double[free.length];
    for (int i = 0; i < free.length; i++) {
      values[i] = all[free[i]];
    }
    return values;
  }

  /** Returns the lens of free numbers, which may stand at the start of a longer array. */
  Lens lens(double[] values) {
    double[] all = spread(values);
    // A focal length that the search takes to 0 or below is no lens: keep it just above.
    double fx = Math.max(1e-3, all[0]);
    double fy = Math.max(1e-3, all[1]);
    return new Lens(fx, fy, all[2], all[3], all[4], all[5], all[6], all[7], all[8]);
  }

  LensErrors errors(double[] values) {
    double[] all = spread(values);
    return new LensErrors(all[0], all[1], all[2], all[3], all[4], all[5], all[6], all[7], all[8]);
  }

  private double[] spread(double[] values) {
    double[] all = new double[ALL];
    for (int i = 0; i < free.length; i++) {
      all[free[i]] = values[i];
    }
    if (squarePixels) {
      all[1] = all[0];
    }
    return all;
  }

  /** Returns a step for the numeric derivative by a free number: px or a distortion term. */
  double step(int i) {
    return free[i] < 4 ? 1e-3 : 1e-5;
  }
}
