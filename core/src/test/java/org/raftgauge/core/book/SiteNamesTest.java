// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SiteNamesTest {

  // A rectangle is read row by row: A1-B2 is A1, A2, B1, B2.
  @ParameterizedTest
  @CsvSource({
    "A1, A1",
    "A1;B2, A1 B2",
    "a1 b2, A1 B2",
    "A1-B2, A1 A2 B1 B2",
    "A1 - A3, A1 A2 A3",
    "C3;A1-A2, C3 A1 A2",
    "A1;A1, A1",
    "Z1-AA1, Z1 AA1",
    "A1-A1;, A1"
  })
  void sitesAndRectanglesAreRead(String text, String sites) {
    assertEquals(
        List.of(sites.split(" ")), SiteNames.parse(text).stream().map(SiteId::toString).toList());
  }

  @Test
  void blankIsNoSite() {
    assertEquals(Set.of(), SiteNames.parse("  "));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1A", "A0", "A", "A1-", "-A1", "A1-B", "A1-B2-C3", "AAA1", "A1/B2"})
  void whatIsNoSiteIsRefused(String text) {
    assertThrows(IllegalArgumentException.class, () -> SiteNames.parse(text));
  }

  @Test
  void rangeThatRunsBackwardsIsRefused() {
    assertEquals(
        "a range must run from its corner nearest A1 to the far one, as in A1-C3, got \"C3-A1\"",
        assertThrows(IllegalArgumentException.class, () -> SiteNames.parse("C3-A1")).getMessage());
    assertThrows(IllegalArgumentException.class, () -> SiteNames.parse("A3-C1"));
  }

  @Test
  void rangeOfMillionsIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> SiteNames.parse("A1-ZZ9999"));
  }

  @Test
  void writtenSitesReadBack() {
    Set<SiteId> sites = SiteNames.parse("B2;A1-A2;AB12");
    assertEquals("A1;A2;B2;AB12", SiteNames.toText(sites));
    assertEquals(sites, SiteNames.parse(SiteNames.toText(sites)));
  }
}
