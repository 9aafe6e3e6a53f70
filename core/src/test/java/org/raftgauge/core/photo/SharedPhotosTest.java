// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SharedPhotosTest {

  @ParameterizedTest
  @ValueSource(strings = {"path-traced", "real-canopy", "tag-photos"})
  void everyPhotoThatNoOneHereWroteDecodes(String name) throws IOException {
    List<Path> pictures = SharedFiles.pictures(name);
    assertFalse(pictures.isEmpty());
    List<String> refused = new ArrayList<>();
    for (Path picture : pictures) {
      DecodeResult result = DecodePhoto.decode(Files.readAllBytes(picture));
      if (result instanceof UnreadablePhoto unreadable) {
        refused.add(picture.getFileName() + ": " + unreadable.reason());
      }
    }
    assertEquals(List.of(), refused);
  }
}
