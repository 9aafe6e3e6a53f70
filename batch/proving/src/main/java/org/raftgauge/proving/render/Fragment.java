// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.solid.Patch;

/** A point of a mesh seen through one pixel. */
final class Fragment {
  Patch patch;
  double x;
  double y;
  double z;
  double u;
  double v;
  double nx;
  double ny;
  double nz;
  double sky;
}
