// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/**
 * Why a photo file gives no picture, and what to do about it.
 *
 * @param reason what is wrong with the file, one line without a full stop
 * @param remedy what the grower can do, one line without a full stop
 */
public record UnreadablePhoto(String reason, String remedy)
    implements DecodeResult, HeaderResult, PeekResult {

  private static final String COPY_AGAIN =
      "copy it from the camera again; if it is the same there, take the photo again";

  /** Checks that both texts are there. */
  public UnreadablePhoto {
    if (reason.isBlank() || remedy.isBlank()) {
      throw new IllegalArgumentException("reason and remedy must not be blank");
    }
  }

  /** Returns the refusal of a file whose bytes were lost or changed on the way. */
  static UnreadablePhoto damaged(String reason) {
    return new UnreadablePhoto(reason, COPY_AGAIN);
  }

  /** Returns the refusal of a sound file of a kind that is not read. */
  static UnreadablePhoto unsupported(String reason) {
    return new UnreadablePhoto(
        reason, "save it as an ordinary RGB JPEG, or set the camera to JPEG");
  }
}
