// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.opencv.PictureCodec;
import org.raftgauge.core.pixels.RgbImage;

class DecodeJpegTest {

  @Test
  void realPhotosComeOutByteForByteAsFromTheOtherDecoder() throws IOException {
    // Second way: OpenCV's own JPEG decoder, another build of the same IJG method.
    List<String> different = new ArrayList<>();
    int compared = 0;
    List<Path> pictures = new ArrayList<>(SharedFiles.pictures("path-traced"));
    pictures.addAll(SharedFiles.pictures("tag-photos"));
    for (Path file : pictures) {
      byte[] bytes = Files.readAllBytes(file);
      if (bytes[0] != (byte) 0xff) {
        continue;
      }
      RgbImage ours = DecodeJpeg.of(bytes).orElseThrow().toRgb();
      RgbImage theirs = PictureCodec.decode(bytes).orElseThrow();
      compared++;
      if (!Arrays.equals(ours.rgb(), theirs.rgb())) {
        different.add(file.getFileName().toString());
      }
    }
    assertEquals(List.of(), different);
    assertTrue(compared > 0);
  }

  @Test
  void coloursFollowTheJfifEquations() {
    // ITU-T T.871 section 7: Y 128, Cb 100, Cr 200 gives R = 128 + 1.402 * 72 = 228.94,
    // G = 128 + 0.344136 * 28 - 0.714136 * 72 = 86.22, B = 128 - 1.772 * 28 = 78.38.
    byte[] levels = {(byte) 128, 100, (byte) 200, 10, (byte) 128, 0, (byte) 250, (byte) 255, 0};
    JpegColours.toRgb(levels);
    // Y 10, Cb 128, Cr 0: R = 10 - 179.5 -> 0, G = 10 + 91.41 = 101.41, B = 10.
    // Y 250, Cb 255, Cr 0: R = 70.54, G = 250 - 43.7 + 91.4 -> 255 (297.7), B = 250 + 225 -> 255.
    assertArrayEquals(
        new byte[] {(byte) 229, 86, 78, 0, 101, 10, 71, (byte) 255, (byte) 255}, levels);
  }

  @Test
  void levelsStoredAsRgbAreLeftAsTheyAre() {
    byte[] jpeg = PhotoBytes.write(TestPictures.board(160, 120, 5), "jpg");
    // APP14 of Adobe technical note 5116: name, version, two flags, transform 0 (r g b) or 1.
    for (byte transform = 0; transform <= 1; transform++) {
      byte[] adobe = {'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, transform};
      assertSameAsTheOtherDecoder(withoutJfif(jpeg, 0xffee, adobe));
    }
  }

  @Test
  void channelsNamedRedGreenBlueAreLeftAsTheyAre() {
    byte[] file =
        withoutJfif(PhotoBytes.write(TestPictures.board(160, 120, 5), "jpg"), 0xfffe, new byte[1]);
    // T.81 B.2.2 and B.2.3: channel names at 10, 13 and 16 of the frame, 5, 7 and 9 of the scan.
    int frame = PhotoBytes.find(file, new byte[] {(byte) 0xff, (byte) 0xc0});
    int scan = PhotoBytes.find(file, new byte[] {(byte) 0xff, (byte) 0xda});
    for (int i = 0; i < 3; i++) {
      file[frame + 10 + 3 * i] = (byte) "RGB".charAt(i);
      file[scan + 5 + 2 * i] = (byte) "RGB".charAt(i);
    }
    assertSameAsTheOtherDecoder(file);
  }

  private static void assertSameAsTheOtherDecoder(byte[] file) {
    assertArrayEquals(
        PictureCodec.decode(file).orElseThrow().rgb(),
        DecodeJpeg.of(file).orElseThrow().toRgb().rgb());
  }

  /** Puts a segment in the place of the JFIF segment, 18 bytes long with its marker. */
  private static byte[] withoutJfif(byte[] jpeg, int marker, byte[] data) {
    ByteBuffer out = ByteBuffer.allocate(jpeg.length - 18 + 4 + data.length);
    out.put(jpeg, 0, 2).putShort((short) marker).putShort((short) (2 + data.length)).put(data);
    return out.put(jpeg, 20, jpeg.length - 20).array();
  }
}
