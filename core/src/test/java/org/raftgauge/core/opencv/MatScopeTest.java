// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.ref.WeakReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;

/** Native objects live as long as their scope. */
class MatScopeTest {
  /** Whatever makes a Java object that stands for a native one. */
  private static final Pattern MADE =
      Pattern.compile(
          "new (Mat|MatOf\\w+|ArucoDetector|DetectorParameters)\\(|StereoSGBM\\.create\\("
              + "|getPredefinedDictionary\\(");

  private static final Pattern GIVEN = Pattern.compile("(own|keep)\\(\\s*(Objdetect\\.)?$");

  @Test
  void whatIsKeptIsNotCollectedBeforeTheScopeCloses() {
    WeakReference<Object> kept;
    try (MatScope scope = new MatScope()) {
      kept = new WeakReference<>(scope.keep(new Object()));
      System.gc();
      assertNotNull(kept.get());
    }
  }

  @Test
  void everyNativeObjectIsGivenToAScope() throws IOException {
    List<String> loose = new ArrayList<>();
    int made = 0;
    try (Stream<Path> sources = Files.list(Path.of("src/main/java/org/raftgauge/core/opencv"))) {
      for (Path source : sources.sorted().toList()) {
        String text = Files.readString(source);
        Matcher matcher = MADE.matcher(text);
        while (matcher.find()) {
          made++;
          if (!GIVEN.matcher(text.substring(0, matcher.start())).find()) {
            loose.add(source.getFileName() + ": " + matcher.group());
          }
        }
      }
    }
    assertTrue(made > 10, made + " native objects");
    assertEquals(List.of(), loose);
  }

  /**
   * A second way: the collector and the finalizers run all the while. Without scopes that keep
   * their tools the process ended by a fault in native code within seconds.
   */
  @Test
  void finalizersThatRunAllTheWhileFreeNothingInUse() throws InterruptedException {
    AtomicBoolean over = new AtomicBoolean();
    Thread collector =
        new Thread(
            () -> {
              while (!over.get()) {
                System.gc();
                System.runFinalization();
              }
            });
    collector.setDaemon(true);
    collector.start();
    RgbImage photo = RgbImage.of(200, 160, new byte[3 * 200 * 160]);
    for (int i = 0; i < 300; i++) {
      assertEquals(List.of(), DetectMarkers.in(photo, 1, DetectMarkers.Search.CONTOURS));
    }
    over.set(true);
    collector.join();
  }
}
