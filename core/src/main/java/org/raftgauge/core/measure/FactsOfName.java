// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;

/** Reads a photo's file name by the book's pattern. */
final class FactsOfName {

  private FactsOfName() {}

  static PhotoName of(CropBook book, String photo) {
    String file = photo.substring(photo.lastIndexOf('/') + 1);
    return book.photoNamePattern().map(p -> p.parse(file)).orElse(PhotoName.silent());
  }
}
