// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.begin;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
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
  /** A side below this is more likely measured in cm; a working value. */
  private static final double SMALL_MM = 150;

  /**
   * Says which lengths can hardly be meant, such as cm for mm.
   *
   * @return in words; none where all may be so
   */
  public List<String> doubts() {
    List<String> doubts = new ArrayList<>();
    if (Math.min(board.widthMm, board.lengthMm) < SMALL_MM) {
      doubts.add(
          "a board of " + mm(board.widthMm, board.lengthMm) + " is very small: were these cm?");
    }
    if (camera.kind == Station.Kind.PASSING && camera.viewMm.isPresent()) {
      double across = camera.viewMm.getAsDouble();
      double down = across * camera.heightPx / camera.widthPx;
      boolean shown =
          Math.min(across, down) >= Math.min(board.widthMm, board.lengthMm)
              && Math.max(across, down) >= Math.max(board.widthMm, board.lengthMm);
      if (!shown) {
        doubts.add(
            "the photo shows "
                + mm(across, down)
                + " of deck, and the board is "
                + mm(board.widthMm, board.lengthMm)
                + ": measure again, or hang the camera higher, for the whole board must show");
      }
    }
    return doubts;
  }

  private static String mm(double across, double down) {
    return Math.round(across) + " x " + Math.round(down) + " mm";
  }

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
