// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.evening.Agreement;

/** Words thresholds made by hand; what they are worked out from, CompareCallsTest tests. */
class AgreeTextTest {
  private static List<String> limit(double best, double crossValidated, double asSet) {
    Agreement.Threshold threshold =
        new Agreement.Threshold(0.85, best, crossValidated, asSet, 60, 3);
    return AgreeText.lines(new Agreement(List.of(), Optional.empty(), Optional.of(threshold)))
        .stream()
        .dropWhile(line -> !line.startsWith("Limit"))
        .toList();
  }

  @Test
  void noOtherLimitIsNamedWhereTheOneThatIsSetAgreesAsOften() {
    assertEquals(
        List.of(
            "Limit    lagging_share as set in crops.yaml agrees on 90 % of 60 sites; no other agrees"
                + " on more"),
        limit(0.9, 0.8, 0.9));
  }

  @Test
  void aLimitThatAgreesMoreOftenIsNamedWithWhatItPromises() {
    List<String> lines = limit(0.9, 0.85, 0.8);
    assertEquals(
        "Limit    lagging_share 0.85 agrees best: on 90 % of 60 sites; as set in crops.yaml 80 %",
        lines.get(0));
    assertFalse(lines.get(1).contains("leave it"), lines.get(1));
    assertTrue(limit(0.9, 0.8, 0.8).get(1).endsWith("no more than as set, so leave it"));
  }
}
