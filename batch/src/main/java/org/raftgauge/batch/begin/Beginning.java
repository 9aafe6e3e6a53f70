// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.begin;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.book.Units;

/**
 * What a new book is begun with.
 *
 * @param zone the farm's time zone
 * @param units of reports
 * @param board the board and its holes
 * @param camera the camera
 * @param first the first rafts
 */
public record Beginning(ZoneId zone, Units units, Holes board, Camera camera, First first) {

  /**
   * A board with a grid of holes in its middle.
   *
   * @param widthMm side along the columns (1, 2, 3, ...)
   * @param lengthMm side along the rows (A, B, C, ...)
   * @param rows number of rows
   * @param columns number of columns
   * @param pitchXMm from column to column
   * @param pitchYMm from row to row
   */
  public record Holes(
      double widthMm, double lengthMm, int rows, int columns, double pitchXMm, double pitchYMm) {

    /** Returns x of A1. */
    double firstXMm() {
      return (widthMm - (columns - 1) * pitchXMm) / 2;
    }

    /** Returns y of A1. */
    double firstYMm() {
      return (lengthMm - (rows - 1) * pitchYMm) / 2;
    }

    /** Says whether the grid lies on the board. */
    public boolean fit() {
      return firstXMm() > 0 && firstYMm() > 0;
    }

    /** Says that it does not, and what to do. */
    public String misfit() {
      return rows
          + " rows and "
          + columns
          + " columns do not fit on the board; measure board and pitch again, in mm; width goes"
          + " along the columns 1, 2, 3";
    }

    /** Returns the name of its layout. */
    String name() {
      return "board-" + rows * columns;
    }
  }

  /**
   * A camera.
   *
   * @param kind passing or fixed
   * @param widthPx of its photos
   * @param heightPx of its photos
   * @param heightMm of the lens over the top of the board
   * @param viewMm of the deck along the photo's width; guessed where absent
   */
  public record Camera(
      Station.Kind kind, int widthPx, int heightPx, double heightMm, OptionalDouble viewMm) {

    /**
     * A phone's main camera sees about as much as a 28 mm lens on a 36 mm film (common practice, no
     * source).
     */
    private static final double GUESS = 28.0 / 36;

    /** Returns the focal length, px. */
    double focalPx() {
      return viewMm.isPresent()
          ? widthPx * heightMm / viewMm.getAsDouble()
          : GUESS * Math.max(widthPx, heightPx);
    }

    /** Returns the station's name. */
    String station() {
      return kind == Station.Kind.PASSING ? "bench" : "over-pond";
    }
  }

  /**
   * The first rafts.
   *
   * @param rafts their ids, one or more
   * @param pond their pond
   * @param crop what grows on them
   * @param colourModel {@code green-leaf} or {@code red-leaf}
   * @param transplantedOn when
   */
  public record First(
      List<String> rafts, String pond, String crop, String colourModel, LocalDate transplantedOn) {

    /** Copies the list. */
    public First {
      rafts = List.copyOf(rafts);
    }
  }
}
