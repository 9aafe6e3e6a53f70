// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.fuzz;

import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodeResult;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.photo.PeekPhoto;
import org.raftgauge.core.photo.PeekResult;
import org.raftgauge.core.photo.PeekedPhoto;
import org.raftgauge.core.photo.UnreadablePhoto;

/** A photo of any bytes: its headers, and its pixels where it claims few enough to be quick. */
public final class FuzzPhoto {
  private static final long MOST_PIXELS = 1L << 20;

  private FuzzPhoto() {}

  /** Reads a photo. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    PeekResult peeked = PeekPhoto.at(bytes);
    if (peeked instanceof UnreadablePhoto bad) {
      Check.hold(!bad.reason().isBlank() && !bad.remedy().isBlank(), "a refusal without words");
      return;
    }
    PeekedPhoto photo = (PeekedPhoto) peeked;
    if ((double) photo.widthPx() * photo.heightPx() > MOST_PIXELS) {
      return;
    }
    DecodeResult decoded = DecodePhoto.decode(bytes);
    if (decoded instanceof DecodedPhoto picture) {
      long width = picture.image().width();
      long height = picture.image().height();
      Check.hold(
          width * height == photo.widthPx() * photo.heightPx(),
          "the picture has another size than its headers say");
    }
  }
}
