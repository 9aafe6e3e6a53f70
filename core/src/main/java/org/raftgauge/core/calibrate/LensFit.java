// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import org.raftgauge.core.book.Lens;

/**
 * A calibrated lens.
 *
 * @param lens the lens, for photos of the size below
 * @param errors its standard errors
 * @param widthPx width of the photos, px
 * @param heightPx height of the photos, px
 * @param views the photos that it was fitted to
 * @param meanErrorPx mean distance between points as seen and as foretold, px
 * @param rmsErrorPx root mean square of that distance, px
 */
public record LensFit(
    Lens lens,
    LensErrors errors,
    int widthPx,
    int heightPx,
    List<ViewFit> views,
    double meanErrorPx,
    double rmsErrorPx)
    implements LensResult {

  /** Copies the views. */
  public LensFit {
    views = List.copyOf(views);
  }
}
