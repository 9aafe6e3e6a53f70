// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.raftgauge.core.book.Names;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.PhotoNamePattern;
import org.raftgauge.core.marker.Cells;
import org.raftgauge.core.marker.DrawMarks;
import org.raftgauge.core.marker.FindTags;
import org.raftgauge.core.marker.TagSighting;
import org.raftgauge.core.pixels.RgbImage;

/** A label of any text: as a name, in a file's name, printed as a tag and read from a picture. */
public final class FuzzTag {
  private static final int LONGEST = 32;
  private static final int PX = 4;
  private static final PhotoNamePattern PATTERN =
      new PhotoNamePattern("{date}_{time}_{raft}_{any}");

  private FuzzTag() {}

  /** Reads a label. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Names.problem("RAFT", text).ifPresent(problem -> Check.problems(List.of(problem)));
    PhotoName name = PATTERN.parse(text);
    Check.hold(name.raft().isEmpty() || name.date().isPresent(), "a raft of half a name");
    if (!text.isBlank() && text.length() <= LONGEST && bytes.length % 7 == 0) {
      photographed(text);
    }
  }

  private static void photographed(String text) {
    List<TagSighting> seen = FindTags.in(picture(DrawMarks.tag(text)));
    Check.hold(seen.size() <= 1, "one tag seen as several");
    if (!seen.isEmpty() && Names.problem("RAFT", text).isEmpty()) {
      Check.hold(
          seen.get(0).text().equals(text.strip()), "a tag reads as another: " + seen.get(0).text());
      Check.hold(seen.get(0).unusable().isEmpty(), "a name is no tag: " + seen.get(0).unusable());
    }
  }

  private static RgbImage picture(Cells cells) {
    int side = PX * (cells.side() + 8);
    byte[] rgb = new byte[3 * side * side];
    for (int i = 0; i < side * side; i++) {
      int x = Math.floorDiv(i % side, PX) - 4;
      int y = Math.floorDiv(Math.floorDiv(i, side), PX) - 4;
      boolean inside = x >= 0 && y >= 0 && x < cells.side() && y < cells.side();
      byte level = (byte) (inside && cells.black(x, y) ? 20 : 230);
      for (int c = 0; c < 3; c++) {
        rgb[3 * i + c] = level;
      }
    }
    return RgbImage.of(side, side, rgb);
  }
}
