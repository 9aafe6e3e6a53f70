// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.Optional;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;

/** Measures a photo: a pure function that several threads call at once. */
public interface Measurer {

  /**
   * Measures a photo.
   *
   * @param bytes of the photo's file
   * @param facts what else is known of it
   * @return what it says, whatever is wrong with it
   */
  PhotoResult measure(byte[] bytes, PhotoFacts facts);

  /**
   * Measures a photo together with what the station's second camera took at the same moment; a
   * measurer that knows of no second cameras leaves it out.
   *
   * @param bytes of the photo's file
   * @param second of the second camera's file, where there is one
   * @param facts what else is known of the photo
   * @return what it says, whatever is wrong with it
   */
  default PhotoResult measure(byte[] bytes, Optional<byte[]> second, PhotoFacts facts) {
    return measure(bytes, facts);
  }

  /**
   * Names the parts of the book that a photo's measure depends on.
   *
   * @param facts what is known of the photo
   * @return a hash that changes when one of those parts changes
   */
  String settingsHash(PhotoFacts facts);
}
