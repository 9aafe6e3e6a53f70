// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.ForecastSource;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.Measurer;
import org.raftgauge.batch.run.ReportPage;
import org.raftgauge.batch.store.Steps;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Opens what the commands work on. */
public interface Workplace {

  /**
   * Reads a crop book.
   *
   * @param book its folder
   * @return the book, ready to measure by
   * @throws InputException with every problem, if it cannot be measured by
   */
  OpenBook open(Path book) throws InputException;

  /**
   * Finds the photos of a folder and reads its manifest.
   *
   * @param photos the folder
   * @return the photos
   * @throws InputException if the folder cannot be used at all
   */
  FoundPhotos photos(Path photos) throws InputException;

  /**
   * Reads everything, measures nothing.
   *
   * @param book the book's folder
   * @param photos the photo folder, where given
   * @return every problem found
   */
  List<Problem> check(Path book, Optional<Path> photos);

  /**
   * Says what of a book may be a guess.
   *
   * @param book the book's folder
   * @return a line each
   */
  default List<String> notes(Path book) {
    return List.of();
  }

  /**
   * Says what of photos is no fault, but may lead to a raft that nobody planted.
   *
   * @param book folder of the crop book
   * @param photos the photo folder
   * @return a line each; none where the folder cannot be read, which check says
   */
  default List<String> notes(Path book, Path photos) {
    return List.of();
  }

  /** Returns what is told before each change of the disk. */
  default Steps steps() {
    return Steps.NONE;
  }

  /**
   * A book, ready to measure by.
   *
   * @param farm answers what a run asks of the book
   * @param measurer measures by the book
   * @param problems what is wrong with parts of it; the rest can be measured by
   * @param page writes the page of a run by the book
   * @param forecasts tells what is to come by the book
   */
  record OpenBook(
      Farm farm,
      Measurer measurer,
      List<Problem> problems,
      ReportPage page,
      ForecastSource forecasts) {

    /** Copies the list. */
    public OpenBook {
      problems = List.copyOf(problems);
    }

    /**
     * Opens a book whose runs have no page and no forecast.
     *
     * @param farm answers what a run asks of the book
     * @param measurer measures by the book
     * @param problems what is wrong with parts of it
     */
    public OpenBook(Farm farm, Measurer measurer, List<Problem> problems) {
      this(farm, measurer, problems, ReportPage.NONE, ForecastSource.NONE);
    }
  }
}
