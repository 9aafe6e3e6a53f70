// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;

class SmallPartsTest {

  @Test
  void aPhotoAfterMidnightBelongsToTheEveningBefore() {
    // Day starts at 04:00 in Lisbon, which is UTC+1 in April.
    HandMadeFarm farm = new HandMadeFarm("R1");

    assertEquals(LocalDate.of(2026, 4, 11), farm.evening(at("2026-04-12T00:20:00+01:00")));
    assertEquals(LocalDate.of(2026, 4, 11), farm.evening(at("2026-04-12T03:59:59+01:00")));
    assertEquals(LocalDate.of(2026, 4, 12), farm.evening(at("2026-04-12T04:00:00+01:00")));
    assertEquals(LocalDate.of(2026, 4, 12), farm.evening(at("2026-04-12T03:00:00Z")));
  }

  @Test
  void picturesAreNamedByThePhotoAndNeverShareAName() {
    PictureNames names =
        new PictureNames(List.of("t/a.jpg", "t/b.jpg", "t/b.png", "t/B.tif", "v1.2/c", ".d"));

    assertEquals("t/a", names.of("t/a.jpg"));
    assertEquals("t/b-jpg", names.of("t/b.jpg"));
    assertEquals("t/b-png", names.of("t/b.png"));
    assertEquals("t/B-tif", names.of("t/B.tif"));
    assertEquals("v1.2/c", names.of("v1.2/c"));
    assertEquals(".d", names.of(".d"));
  }

  @Test
  void picturesOfAPhotoWithALongNameGetAShortOneOfTheirOwn() {
    // 230 bytes leave room for ".coverage.png" in the 255 that file systems take; an o with an
    // accent has two.
    String longest = "t/" + "x".repeat(230);
    String over = "t/" + "\u00f3".repeat(116);
    PictureNames names = new PictureNames(List.of(longest + ".jpg", over + ".jpg", over + "a.jpg"));

    assertEquals(longest, names.of(longest + ".jpg"));
    assertTrue(
        names.of(over + ".jpg").matches("t/\u00f3{40}-[0-9a-f]{16}"), names.of(over + ".jpg"));
    assertNotEquals(names.of(over + ".jpg"), names.of(over + "a.jpg"));
  }

  @Test
  void jsonIsEscapedAndIndented() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("text", "a\"b\\c\n\u00e9");
    map.put("list", List.of(1, 2.5, true));
    map.put("none", List.of());

    // RFC 8259, section 7: quotation mark, reverse solidus and control characters are escaped.
    assertEquals(
        "{\n  \"text\": \"a\\\"b\\\\c\\u000a\u00e9\",\n  \"list\": [\n    1,\n    2.5,\n    true\n"
            + "  ],\n  \"none\": []\n}",
        Json.of(map));
  }

  @Test
  void aRunFolderKnowsItsFiles(@TempDir Path folder) throws Exception {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("run", "run-1");
    String json = RunJson.text(facts, List.of(Path.of("photos.csv"), Path.of("overlays", "a.jpg")));
    Files.writeString(folder.resolve("run.json"), json);

    assertTrue(RunJson.isOf(folder, "run-1"));
    assertFalse(RunJson.isOf(folder, "run-2"));
    assertTrue(RunJson.lists(json, Path.of("overlays", "a.jpg")));
    assertTrue(RunJson.lists(json, Path.of("photos.csv")));
    assertTrue(RunJson.lists(json, Path.of("run.json")));
    assertFalse(RunJson.lists(json, Path.of("a.jpg")));
    Files.writeString(folder.resolve("run.json"), "{\"program\": \"another\"}");
    assertEquals("", RunJson.read(folder));
  }

  @Test
  void aChangeOfTheMeasuringCodeChangesItsHash(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("A.class"), "one");
    String before = ProgramVersion.hash(folder);
    Files.writeString(folder.resolve("A.class"), "two");

    assertNotEquals(before, ProgramVersion.hash(folder));
    assertEquals(64, ProgramVersion.current().measuringCode().length());
  }

  @Test
  void hashesOfTextsDoNotRunTogether() {
    assertNotEquals(Digest.of("ab", "c"), Digest.of("a", "bc"));
    // FIPS 180-2, appendix B.1: SHA-256 of "abc".
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        Digest.of(new byte[] {'a', 'b', 'c'}));
  }

  private static OffsetDateTime at(String text) {
    return OffsetDateTime.parse(text);
  }
}
