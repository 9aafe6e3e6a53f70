// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.Optional;
import org.opencv.core.CvException;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import org.raftgauge.core.pixels.DeepImage;
import org.raftgauge.core.pixels.RgbImage;

/** Turns the bytes of a picture file into pixels. */
public final class PictureCodec {
  // A 16-bit level v stands for v / 65535, an 8-bit level for v / 255; 65535 / 255 = 257.
  private static final double LEVELS_16_PER_8 = 257;

  private static final int READ =
      Imgcodecs.IMREAD_COLOR | Imgcodecs.IMREAD_ANYDEPTH | Imgcodecs.IMREAD_IGNORE_ORIENTATION;

  private PictureCodec() {}

  /**
   * Decodes a picture file into 8-bit sRGB, as stored: no orientation tag of a JPEG or PNG is
   * applied. Grey is expanded to three equal channels, an alpha channel is dropped, 16-bit levels
   * are scaled to 8 bits with rounding.
   *
   * @param bytes a whole JPEG, PNG or TIFF file
   * @return the picture; empty where the bytes cannot be decoded or are neither 8 nor 16 bits deep
   */
  public static Optional<RgbImage> decode(byte[] bytes) {
    if (bytes.length == 0) {
      return Optional.empty();
    }
    try (MatScope scope = new MatScope()) {
      Mat file = scope.own(new MatOfByte(bytes));
      Mat bgr = scope.own(Imgcodecs.imdecode(file, READ));
      return bgr.empty() ? Optional.empty() : rgb(scope, bgr);
    } catch (CvException e) {
      // The binding throws on some broken files where it returns an empty picture on others.
      return Optional.empty();
    }
  }

  /**
   * Decodes a picture of 16-bit levels in one channel, as a depth camera writes it.
   *
   * @param bytes a whole PNG or TIFF file
   * @return its levels as they are stored; empty where the bytes are not such a picture
   */
  public static Optional<DeepImage> deep(byte[] bytes) {
    if (bytes.length == 0) {
      return Optional.empty();
    }
    try (MatScope scope = new MatScope()) {
      Mat file = scope.own(new MatOfByte(bytes));
      Mat grey = scope.own(Imgcodecs.imdecode(file, Imgcodecs.IMREAD_UNCHANGED));
      if (grey.empty() || grey.type() != CvType.CV_16UC1) {
        return Optional.empty();
      }
      short[] levels = new short[(int) grey.total()];
      grey.get(0, 0, levels);
      return Optional.of(DeepImage.of(grey.cols(), grey.rows(), levels));
    } catch (CvException e) {
      return Optional.empty();
    }
  }

  private static Optional<RgbImage> rgb(MatScope scope, Mat bgr) {
    Mat bgr8 = bgr;
    if (bgr.depth() == CvType.CV_16U) {
      bgr8 = scope.mat();
      bgr.convertTo(bgr8, CvType.CV_8U, 1 / LEVELS_16_PER_8);
    } else if (bgr.depth() != CvType.CV_8U) {
      return Optional.empty();
    }
    Mat rgb = scope.mat();
    Imgproc.cvtColor(bgr8, rgb, Imgproc.COLOR_BGR2RGB);
    return Optional.of(RgbImage.of(rgb.cols(), rgb.rows(), MatScope.bytes(rgb)));
  }
}
