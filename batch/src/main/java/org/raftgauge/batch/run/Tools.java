// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import org.raftgauge.batch.store.Steps;

/**
 * What a run works with.
 *
 * @param farm the book
 * @param measurer measures a photo
 * @param pictures makes pictures
 * @param progress is told how it gets on
 * @param page writes the page that people read
 * @param forecasts tells what is to come
 * @param steps told before each change of the disk
 */
public record Tools(
    Farm farm,
    Measurer measurer,
    Pictures pictures,
    Progress progress,
    ReportPage page,
    ForecastSource forecasts,
    Steps steps) {

  /**
   * Collects tools for a run without a page or a forecast.
   *
   * @param farm the book
   * @param measurer measures a photo
   * @param pictures makes pictures
   * @param progress is told how it gets on
   */
  public Tools(Farm farm, Measurer measurer, Pictures pictures, Progress progress) {
    this(farm, measurer, pictures, progress, ReportPage.NONE, ForecastSource.NONE, Steps.NONE);
  }
}
