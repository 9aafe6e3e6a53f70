// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.proving.accuracy.RealCanopySection;
import org.raftgauge.proving.accuracy.RealPhotoScore;
import org.raftgauge.proving.accuracy.RealSet;
import org.raftgauge.proving.accuracy.ScoreRealCanopy;

/** Real overhead photos with hand-drawn masks, without a board. */
final class RealPhotosSection {

  private RealPhotosSection() {}

  static Section make(Bench bench) throws IOException {
    List<RealPhotoScore> scores = new ArrayList<>();
    Optional<Path> data = bench.shared("real-canopy");
    if (data.isPresent()) {
      for (RealSet set : RealSet.values()) {
        scores.addAll(ScoreRealCanopy.of(data.get(), set));
      }
    }
    List<String> lines = RealCanopySection.lines(scores);
    String title = lines.get(0).substring("## ".length());
    return new Section(title, String.join("\n", lines.subList(1, lines.size())).strip() + "\n", "");
  }
}
