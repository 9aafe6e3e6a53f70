// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same photos and book give the same bytes, whatever machine, language and order. */
class SameBytesTest {
  private static final Path FARM = Path.of("src", "test", "resources", "bad-input", "farm");

  /** Names in an order that differs between alphabets, and between the cases of Turkish. */
  private static final List<String> PHOTOS =
      List.of(
          "2026-04-09_B-1.png",
          "2026-04-09_B-2.PNG",
          "I/2026-04-10_B-1.png",
          "i/2026-04-10_B-2.jpg",
          "ä/2026-04-10_B-3.png");

  private final Locale locale = Locale.getDefault();
  private final TimeZone zone = TimeZone.getDefault();

  @TempDir private Path scratch;

  @AfterEach
  void putBack() {
    Locale.setDefault(locale);
    TimeZone.setDefault(zone);
  }

  @Test
  void tablesAreTheSameBytesUnderAnyLanguageZoneOrderAndNumberOfWorkers() throws IOException {
    Locale.setDefault(Locale.ROOT);
    Map<String, String> first = tables("first", PHOTOS, 1);
    assertTrue(first.keySet().containsAll(List.of("photos.csv", "sites.csv", "rafts.csv")));
    assertEquals(first, tables("again", PHOTOS, 1), "a second run");
    assertEquals(first, tables("two", PHOTOS, 2), "two workers");
    List<String> backwards = new ArrayList<>(PHOTOS);
    Collections.reverse(backwards);
    assertEquals(first, tables("order", backwards, 2), "files made in another order");
    for (String[] place :
        new String[][] {
          {"tr-TR", "Europe/Istanbul"},
          {"ar-EG-u-nu-arab", "Pacific/Kiritimati"},
          {"de-DE", "America/St_Johns"},
          {"th-TH-u-ca-buddhist-nu-thai", "Asia/Bangkok"}
        }) {
      Locale.setDefault(Locale.forLanguageTag(place[0]));
      TimeZone.setDefault(TimeZone.getTimeZone(place[1]));
      assertEquals(first, tables(place[0], PHOTOS, 1), String.join(" in ", place));
    }
  }

  @Test
  void tablesAreTheSameBytesUnderAnotherDefaultCharset() throws Exception {
    Map<String, String> first = tables("first", PHOTOS.subList(0, 4), 1);
    Path farm = farm("latin", PHOTOS.subList(0, 4));
    List<String> call = new ArrayList<>();
    call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    call.addAll(
        List.of("-Dfile.encoding=ISO-8859-1", "-Duser.language=tr", "-Djava.awt.headless=true"));
    call.addAll(List.of("-cp", System.getProperty("java.class.path"), Raftgauge.class.getName()));
    call.addAll(call(farm, 1));
    Process process = new ProcessBuilder(call).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    assertEquals(first, read(farm.resolve("out")));
  }

  private Map<String, String> tables(String name, List<String> photos, int workers)
      throws IOException {
    Path farm = farm(name, photos);
    Said said = Said.by(call(farm, workers));
    assertEquals(0, said.code(), said.err());
    return read(farm.resolve("out"));
  }

  private static List<String> call(Path farm, int workers) {
    return List.of(
        "run",
        farm.resolve("photos").toString(),
        "--book=" + farm.resolve("book"),
        "--out=" + farm.resolve("out"),
        "--no-overlays",
        "--workers=" + workers);
  }

  /** Copies the farm and makes its photos, in the order given. */
  private Path farm(String name, List<String> photos) throws IOException {
    Path farm = scratch.resolve(name);
    Said.copy(FARM, farm);
    for (String photo : photos) {
      Path file = farm.resolve("photos").resolve(photo);
      Files.createDirectories(file.getParent());
      String kind = photo.endsWith("jpg") ? "jpeg " : "png ";
      Files.write(file, PhotoRecipe.bytes(kind + PHOTOS.indexOf(photo)));
    }
    return farm;
  }

  private static Map<String, String> read(Path out) throws IOException {
    Map<String, String> tables = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(out)) {
      for (Path file : walk.filter(f -> f.toString().matches(".*\\.(csv|html)")).toList()) {
        tables.put(out.relativize(file).toString(), Files.readString(file));
      }
    }
    return tables;
  }
}
