// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

/** What came of a calibration: a lens, or why there is none. */
public sealed interface LensResult permits LensFit, NoLens {}
