// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.begin;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** The files of a new book, with comments that say what to mend first. */
final class BookTexts {
  private final Beginning of;
  private final Beginning.Holes board;
  private final Beginning.Camera camera;
  private final Beginning.First first;

  BookTexts(Beginning of) throws InputException {
    this.of = of;
    this.board = of.board();
    this.camera = of.camera();
    this.first = of.first();
    if (!board.fit()) {
      throw new InputException(
          List.of(
              new Problem(
                  "the board",
                  board.rows() + " rows and " + board.columns() + " columns do not fit on it",
                  "measure board and pitch again, in mm; width goes along the columns 1, 2, 3")));
    }
  }

  String settings() {
    boolean passing = camera.kind() == Station.Kind.PASSING;
    return """
        # The farm. batch/CROP-BOOK.md explains every file of this folder.
        time_zone: %s
        day_starts_at: "04:00"           # a photo at 00:20 belongs to the evening before
        station: %s                   # for photos that neither folder, name nor manifest places
        photo_name: "%s"     # how photo files are named; without it tag and camera clock tell
        units: %s
        """
        .formatted(
            of.zone(),
            camera.station(),
            passing ? "{date}_{raft}" : "{date}_{station}",
            of.units().name().toLowerCase(Locale.ROOT));
  }

  String station() {
    String focal = number(camera.focalPx());
    String source =
        camera.viewMm().isPresent()
            ? "from " + number(camera.viewMm().getAsDouble()) + " mm of deck across the photo"
            : "A GUESS: areas may be wrong by a third until it is calibrated";
    String head =
        """
        kind: %s
        image_width_px: %d
        image_height_px: %d
        # The lens, %s.
        # "raftgauge station lens" calibrates it from photos of a printed target (calibration/README.md).
        lens: {fx_px: %s}
        camera_height_mm: %s             # lens over the top of the board, board afloat; measure it
        """
            .formatted(
                camera.kind().name().toLowerCase(Locale.ROOT),
                camera.widthPx(),
                camera.heightPx(),
                source,
                focal,
                number(camera.heightMm()));
    return camera.kind() == Station.Kind.PASSING ? head : head + slots();
  }

  private String slots() {
    return """
        # Where boards lie in the photo: corners clockwise as the photo shows them, from the one nearest
        # A1. These are a place in the middle; "raftgauge station slots" proposes them from a photo.
        slots:
          - {name: s1, layout: %s, corners_px: %s, refine: edges}
        """
        .formatted(board.name(), SlotCorners.text(board, camera));
  }

  String layouts() {
    String marks = "";
    if (camera.kind() == Station.Kind.PASSING) {
      marks = new Marks(board).text();
    }
    return """
        # Boards, in mm from the corner nearest A1; x along the columns 1, 2, 3, y along the rows A, B, C.
        # The holes are taken to lie in the middle of the board: measure the first one from the corner.
        layouts:
          %s:
            board: {width_mm: %s, length_mm: %s}
            sites: {rows: %d, columns: %d, first_x_mm: %s, first_y_mm: %s, pitch_x_mm: %s, pitch_y_mm: %s}
        %s"""
        .formatted(
            board.name(),
            number(board.widthMm()),
            number(board.lengthMm()),
            board.rows(),
            board.columns(),
            number(board.firstXMm()),
            number(board.firstYMm()),
            number(board.pitchXMm()),
            number(board.pitchYMm()),
            marks);
  }

  String crops() {
    return """
        # Crops. The height model is a guess to begin with: measure some plants with a ruler when you weigh
        # them, and "raftgauge grader fit" fits it. harvest and others: batch/CROP-BOOK.md.
        crops:
          %s:
            colour_model: %s
            height_model: {scale_mm: 5.2, exponent: 0.5}     # mean canopy height = scale * area_cm2 ^ exponent
            emerged_by_das: 7                                # days after sowing by which leaf must show
        """
        .formatted(first.crop(), first.colourModel());
  }

  String plantings() {
    StringBuilder rows =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n");
    int berth = 1;
    for (String raft : first.rafts()) {
      rows.append(
          "%s,%s,%d,%s,,%s,,,%s,,,\n"
              .formatted(
                  raft, first.pond(), berth, first.crop(), board.name(), first.transplantedOn()));
      berth++;
    }
    return rows.toString();
  }

  String placements() {
    return """
        station,slot,raft,from,to
        %s,s1,%s,%s,
        """
        .formatted(camera.station(), first.rafts().get(0), first.transplantedOn());
  }

  static String number(double value) {
    return BigDecimal.valueOf(value)
        .setScale(1, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Markers in the corners and a tag above row A, as large as there is room for. */
  private record Marks(Beginning.Holes board) {
    /** Common sizes (common practice, no source): larger ones are read from farther. */
    private static final double MARKER_MM = 36;

    private static final double TAG_MM = 60;

    /** Smaller ones are hardly read. */
    private static final double LEAST_MM = 20;

    /** White rim to the board's edge and to a hole. */
    private static final double RIM_MM = 12;

    String text() {
      double hole =
          new SiteGrid(
                  board.rows(),
                  board.columns(),
                  board.firstXMm(),
                  board.firstYMm(),
                  board.pitchXMm(),
                  board.pitchYMm(),
                  0)
              .holeMm();
      double corner = Math.max(board.firstXMm(), board.firstYMm()) - hole / 2 - 2 * RIM_MM;
      double above = board.firstYMm() - hole / 2 - 2 * RIM_MM;
      double marker = Math.min(MARKER_MM, Math.floor(corner));
      double tag = Math.min(TAG_MM, Math.floor(above));
      String text = "";
      if (marker >= LEAST_MM) {
        double in = RIM_MM + marker / 2;
        text +=
            "    markers: {family: tag36h11, side_mm: %s, centres_mm: [[%s, %s], [%s, %s], [%s, %s], [%s, %s]]}\n"
                .formatted(
                    number(marker),
                    number(in),
                    number(in),
                    number(board.widthMm() - in),
                    number(in),
                    number(board.widthMm() - in),
                    number(board.lengthMm() - in),
                    number(in),
                    number(board.lengthMm() - in));
      }
      if (tag >= LEAST_MM && board.widthMm() > tag + 2 * (marker + 3 * RIM_MM)) {
        text +=
            "    tag: {x_mm: %s, y_mm: %s, side_mm: %s}     # the raft's id; \"raftgauge station print marks\"\n"
                .formatted(number(board.widthMm() / 2), number(RIM_MM + tag / 2), number(tag));
      }
      return text.isEmpty()
          ? "    # No room for markers or a tag: the board's outline and the photo's name must do.\n"
          : text;
    }
  }
}
