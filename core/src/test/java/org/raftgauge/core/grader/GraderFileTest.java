// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.GraderReader;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.Problem;

class GraderFileTest {
  @TempDir private Path folder;

  @Test
  void graderReadBackTellsTheSameWeights() throws IOException {
    List<Weighed> plants = new ArrayList<>(Plants.twoVarieties(20, 0.08, 9));
    plants.addAll(Plants.closed(12, 0.1, 4));
    Grader grader = Plants.fitted(plants);
    Grader back = read(GraderFile.write(grader)).orElseThrow();

    assertEquals(grader.origin(), back.origin());
    assertEquals(grader.height(), back.height());
    assertEquals(grader.remarks(), back.remarks());
    assertEquals(grader.refused(), back.refused());
    for (Regime regime : Regime.values()) {
      RegimeFit fit = grader.fit(regime).orElseThrow();
      RegimeFit again = back.fit(regime).orElseThrow();
      assertEquals(fit.numbers(), again.numbers());
      assertArrayEquals(fit.coefficients(), again.coefficients());
      assertArrayEquals(fit.covariance()[1], again.covariance()[1]);
    }
    Traits plant = Traits.ofArea("Marle", 222);
    assertEquals(
        grader.predict(Regime.OPEN, plant).orElseThrow(),
        back.predict(Regime.OPEN, plant).orElseThrow());
  }

  @Test
  void fileSaysWhatItIsForInItsFirstLines() {
    List<String> lines =
        GraderFile.write(Plants.fitted(Plants.open(20, 0.1, 5))).lines().limit(5).toList();
    assertEquals(
        "# Weights are estimates from pictures, not legal-for-trade weighing.", lines.get(1));
    assertEquals("crop: \"butterhead\"", lines.get(3));
  }

  @Test
  void hostileTextStaysText() throws IOException {
    Grader.Origin odd = new Grader.Origin("t", "p", "s", "f", "l", 24, "a \"b\" \\ c: - #d\n e");
    Grader grader =
        (Grader) FitGrader.fit("x: y", Plants.open(20, 0.1, 5), FitRule.defaults(), odd);
    Grader back = read(GraderFile.write(grader)).orElseThrow();
    assertEquals("x: y", back.crop());
    assertEquals("a \"b\" \\ c: - #d  e", back.origin().source());
  }

  @Test
  void wrongNumbersAndTermsAreSaidWithPlaceAndRemedy() throws IOException {
    String good = GraderFile.write(Plants.fitted(Plants.open(20, 0.1, 5)));
    assertEquals(
        List.of(
            "graders/butterhead.yaml:14:15: regimes.open.residual_sd_ln: \"0,1\" is not a number;"
                + " write a dot, as in 0.1"),
        problems(good.replaceAll("residual_sd_ln: .*", "residual_sd_ln: \"0,1\"")).stream()
            .map(p -> p.replaceAll(":\\d+:\\d+", ":14:15"))
            .toList());
    assertEquals(
        List.of(
            "graders/butterhead.yaml: regimes.open.terms: \"ln weight\" is not a term; write 1, ln"
                + " area_cm2, ln top_height_mm or ln curve_area_cm2, joined by *"),
        problems(good.replace("\"ln area_cm2\"", "\"ln weight\"")));
    assertTrue(
        problems(good.replace("coefficients: [", "coefficients: [1, "))
            .get(0)
            .endsWith("the list has 3 values; write 2 numbers"));
    assertTrue(problems(good.replace("smearing:", "smering:")).toString().contains("smering"));
    assertTrue(problems("crop: x\n").get(0).contains("the key fitted_at is missing"));
  }

  @Test
  void termsReadBackAsWritten() {
    for (Term term :
        List.of(
            Term.of(),
            Term.of(Size.AREA),
            Term.of(Size.AREA, Size.AREA),
            Term.of(Size.HEIGHT, Size.AREA).onlyFor("Red of Oak"))) {
      assertEquals(Optional.of(term), Term.parse(term.toString()));
    }
    assertEquals("ln area_cm2 * ln top_height_mm", Term.of(Size.HEIGHT, Size.AREA).toString());
    assertEquals(Optional.empty(), Term.parse("sqrt area_cm2"));
    assertEquals(
        OptionalDouble.of(0),
        Term.of(Size.AREA).onlyFor("Halm").value(Traits.ofArea("Marle", 100)));
  }

  private Optional<Grader> read(String text) throws IOException {
    Findings findings = new Findings();
    Optional<Grader> grader = read(text, findings);
    assertEquals(List.of(), findings.list());
    return grader;
  }

  private Optional<Grader> read(String text, Findings findings) throws IOException {
    Path file = Files.writeString(folder.resolve("butterhead.yaml"), text);
    return GraderReader.read(file, findings).flatMap(s -> ReadGrader.from(s, findings));
  }

  private List<String> problems(String text) throws IOException {
    Findings findings = new Findings();
    assertEquals(Optional.empty(), read(text, findings));
    return findings.list().stream().map(Problem::toString).toList();
  }
}
