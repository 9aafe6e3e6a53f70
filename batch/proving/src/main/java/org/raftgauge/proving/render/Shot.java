// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.solid.Tint;

/**
 * The camera's electronics and optics for one photo.
 *
 * @param gain what linear light is multiplied by before it is encoded, per channel: exposure and
 *     white balance
 * @param optics blur, haze and vignetting
 * @param noise shot and read noise
 * @param finish tone curve, sharpening and JPEG
 * @param seed of the noise
 */
public record Shot(Tint gain, Optics optics, Noise noise, Finish finish, long seed) {

  /**
   * What the lens does to the light.
   *
   * @param blurPx standard deviation of the defocus, px
   * @param motionPx length of the motion blur along x, px
   * @param vignetting light lost in the corners, 0..1
   * @param haze share of veiling light, 0..1
   */
  public record Optics(double blurPx, double motionPx, double vignetting, double haze) {}

  /**
   * What the sensor adds, in units of full scale.
   *
   * @param shot variance per signal: variance = shot * signal
   * @param read standard deviation in the dark
   */
  public record Noise(double shot, double read) {}

  /**
   * What the camera's processor does.
   *
   * @param contrast strength of an S-shaped tone curve, 0 none
   * @param sharpen strength of the unsharp mask, 0 none
   * @param jpegQuality 1..100
   */
  public record Finish(double contrast, double sharpen, int jpegQuality) {}
}
