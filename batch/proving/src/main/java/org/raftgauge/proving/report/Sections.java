// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The parts of the accuracy page, in their order. */
public final class Sections {
  /** Add a part here: a function from the bench to a section. */
  private static final List<Maker> MAKERS =
      List.of(
          PathTracedSection::make,
          RealPhotosSection::make,
          TaughtSection::make,
          ChartsSection::make,
          RenderedSection::make,
          TunedSection::make,
          CoarseSection::make,
          FillingsSection::make,
          EveningsSection::make,
          HoldsSection::make,
          ModelsSection::make,
          ErrorBarsSection::make,
          SamplesSection::make,
          VerdictsSection::make);

  private Sections() {}

  /** Makes a section. */
  private interface Maker {
    Section make(Bench bench) throws IOException;
  }

  /**
   * Makes all sections; this takes minutes.
   *
   * @param bench what to work with
   * @return the sections
   * @throws IOException if a run fails or a file cannot be written
   */
  public static List<Section> make(Bench bench) throws IOException {
    List<Section> sections = new ArrayList<>();
    for (Maker maker : MAKERS) {
      sections.add(maker.make(bench));
    }
    return sections;
  }

  /**
   * Makes the section on verdicts alone; this takes many minutes.
   *
   * @param bench what to work with
   * @return the section
   * @throws IOException if a file cannot be written
   */
  public static Section verdicts(Bench bench) throws IOException {
    return VerdictsSection.make(bench);
  }

  /**
   * Makes the section on plugs of many kinds alone; this takes minutes.
   *
   * @param bench what to work with
   * @return the section
   * @throws IOException if a run fails or a file cannot be written
   */
  public static Section fillings(Bench bench) throws IOException {
    return FillingsSection.make(bench);
  }
}
