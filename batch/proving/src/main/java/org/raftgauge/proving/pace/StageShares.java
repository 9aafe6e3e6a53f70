// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Where the time of measuring goes: the stage in which a thread is found, looked at every few
 * milliseconds.
 */
final class StageShares {
  private static final int EVERY_MS = 5;

  /** The first of these classes on the stack, from the outermost call on, is the stage. */
  private static final Map<String, String> STAGES = stages();

  private static final String OTHER = "reading, hashing, naming boards, the rest";

  private final Thread watched;
  private final Map<String, Integer> counts = new LinkedHashMap<>();
  private final AtomicBoolean over = new AtomicBoolean();

  private StageShares(Thread watched) {
    this.watched = watched;
    STAGES.values().forEach(stage -> counts.put(stage, 0));
    counts.put(OTHER, 0);
  }

  private static Map<String, String> stages() {
    Map<String, String> stages = new LinkedHashMap<>();
    stages.put("photo.DecodePhoto", "decoding and averaging");
    stages.put("photo.DecodedPhoto", "decoding and averaging");
    stages.put("photo.PhotoQuality", "quality");
    stages.put("plane.FindBoards", "finding boards");
    stages.put("measure.SharedLight", "drawing decks, evening light");
    stages.put("canopy.SegmentCanopy", "telling leaf");
    stages.put("canopy.OpenGround", "telling leaf");
    stages.put("site.MeasureSites", "giving leaf to plants, measuring them");
    stages.put("measure.WitnessOf", "witness of camera and lens");
    return stages;
  }

  /** Something to measure. */
  interface Work {
    void run() throws IOException;
  }

  /** Does some work on this thread and returns the share of its time in each stage, 0..1. */
  static Map<String, Double> of(Work work) throws IOException {
    StageShares shares = new StageShares(Thread.currentThread());
    Thread looking = new Thread(shares::look, "stages");
    looking.setDaemon(true);
    looking.start();
    try {
      work.run();
    } finally {
      shares.over.set(true);
      join(looking);
    }
    double all = Math.max(1, shares.counts.values().stream().mapToInt(n -> n).sum());
    Map<String, Double> of = new LinkedHashMap<>();
    shares.counts.forEach((stage, n) -> of.put(stage, n / all));
    return of;
  }

  private void look() {
    while (!over.get()) {
      counts.merge(stage(List.of(watched.getStackTrace())), 1, Integer::sum);
      try {
        Thread.sleep(EVERY_MS);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private static String stage(List<StackTraceElement> stack) {
    for (int i = stack.size() - 1; i >= 0; i--) {
      String name = stack.get(i).getClassName();
      String stage = STAGES.get(name.replaceFirst("^org\\.raftgauge\\.core\\.", ""));
      if (stage != null) {
        return stage;
      }
    }
    return OTHER;
  }

  private static void join(Thread thread) {
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
