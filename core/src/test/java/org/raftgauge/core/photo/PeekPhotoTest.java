// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.nio.ByteOrder;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PeekPhotoTest {

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void sizeAndTimeAreThoseOfTheDecodedPhotoWhateverItsOrientation(int orientation) {
    byte[] jpeg = PhotoBytes.write(TestPictures.noise(48, 32, 1), "jpg");
    byte[] file = PhotoBytes.withExif(jpeg, PhotoBytes.exif(orientation, ByteOrder.LITTLE_ENDIAN));

    PeekedPhoto peeked = assertInstanceOf(PeekedPhoto.class, PeekPhoto.at(file));
    DecodedPhoto decoded = assertInstanceOf(DecodedPhoto.class, DecodePhoto.decode(file));

    assertEquals(decoded.image().width(), peeked.widthPx());
    assertEquals(decoded.image().height(), peeked.heightPx());
    assertEquals(Optional.of(PhotoBytes.TAKEN_AT), peeked.tags().takenAt());
    assertEquals(decoded.tags(), peeked.tags());
  }

  @Test
  void whatCannotBeReadIsRefusedAsDecodingWouldRefuseIt() {
    byte[] png = PhotoBytes.write(TestPictures.noise(48, 32, 1), "png");
    for (byte[] file :
        new byte[][] {
          {},
          new byte[100],
          "raft,site".getBytes(java.nio.charset.StandardCharsets.UTF_8),
          PhotoBytes.cut(png, 60),
          PhotoBytes.write(TestPictures.noise(8, 8, 1), "png")
        }) {
      UnreadablePhoto peeked = assertInstanceOf(UnreadablePhoto.class, PeekPhoto.at(file));
      assertEquals(DecodePhoto.decode(file), peeked);
    }
  }
}
