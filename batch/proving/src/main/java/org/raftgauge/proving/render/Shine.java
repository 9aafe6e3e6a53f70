// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

/** Light on a surface: what arrives, to be scattered, and what is mirrored towards the camera. */
final class Shine {
  double r;
  double g;
  double b;
  double mirrored;
  double throughR;
  double throughG;
  double throughB;
}
