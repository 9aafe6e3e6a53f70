// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FindingsTest {

  @Test
  void problemReadsPlaceThenFaultThenRemedy() {
    Problem problem = new Problem("crops.yaml:3:5: crops.basil", "\"x\" is unknown", "write y");
    assertEquals("crops.yaml:3:5: crops.basil: \"x\" is unknown; write y", problem.toString());
    assertTrue(problem.isError());
  }

  @Test
  void warningIsNoError() {
    Problem warning = Problem.warning("a", "b", "c");
    assertFalse(warning.isError());
    assertEquals("a: b; c", warning.toString());
  }

  @Test
  void noPartOfAProblemMayBeMissing() {
    assertEquals(
        "remedy",
        assertThrows(NullPointerException.class, () -> new Problem("a", "b", null)).getMessage());
  }

  @Test
  void errorsAreCountedWithoutWarnings() {
    Findings findings = new Findings();
    findings.warning("a", "b", "c");
    assertEquals(0, findings.errors());
    findings.error("d", "e", "f");
    findings.addAll(List.of(new Problem("g", "h", "i"), Problem.warning("j", "k", "l")));
    assertEquals(2, findings.errors());
    assertEquals(
        List.of("a: b; c", "d: e; f", "g: h; i", "j: k; l"),
        findings.list().stream().map(Problem::toString).toList());
  }

  @Test
  void listIsACopy() {
    Findings findings = new Findings();
    List<Problem> before = findings.list();
    findings.error("d", "e", "f");
    assertEquals(List.of(), before);
  }

  @Test
  void exceptionSaysEveryProblem() {
    InputException exception =
        new InputException(List.of(new Problem("a", "b", "c"), new Problem("d", "e", "f")));
    assertEquals("a: b; c" + System.lineSeparator() + "d: e; f", exception.getMessage());
    assertEquals(2, exception.problems().size());
  }

  @Test
  void ofAFileWithVeryManyProblemsAHundredAreKeptAndTheOthersCounted() {
    Findings findings = new Findings();
    for (int line = 2; line < 302; line++) {
      findings.error("weighings.csv:" + line, "found", "mend");
      findings.warning("seen.csv:" + line, "found", "mend");
    }
    findings.error("book.yaml:1:2", "found", "mend");
    List<Problem> list = findings.list();
    assertEquals(203, list.size());
    assertEquals(301, findings.errors());
    assertEquals("book.yaml:1:2: found; mend", list.get(200).toString());
    assertEquals(
        "weighings.csv: 200 more problems are not listed; mend these first, and check it again",
        list.get(201).toString());
    assertEquals(List.of(true, false), List.of(list.get(201).isError(), list.get(202).isError()));
  }
}
