// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reading of layouts.yaml. */
class LayoutsYamlTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  @Test
  void layoutIsRead() {
    CropBook book =
        book()
            .change(
                "layouts.yaml",
                "  strip:",
                """
                marked:
                  board: {width_mm: 600, length_mm: 1200}
                  sites: {rows: 6, columns: 3, first_x_mm: 120, first_y_mm: 150, pitch_x_mm: 170, pitch_y_mm: 180, stagger_x_mm: 10}
                  markers: {family: tag36h11, side_mm: 36, centres_mm: [[30, 30], [570, 30], [570, 1170], [30, 1170]]}
                  tag: {x_mm: 300, y_mm: 42, side_mm: 60}
                  orientation_mark: {x_mm: 20, y_mm: 600, diameter_mm: 15, look: coloured}
                strip:\
                """
                    .indent(2)
                    .stripTrailing())
            .sound();
    assertEquals(
        Optional.of(
            new Layout(
                "marked",
                Optional.empty(),
                new Board(600, 1200),
                new SiteGrid(6, 3, 120, 150, 170, 180, 10),
                Optional.of(
                    new CornerMarkers(
                        36,
                        List.of(
                            new PointMm(30, 30),
                            new PointMm(570, 30),
                            new PointMm(570, 1170),
                            new PointMm(30, 1170)))),
                Optional.of(new TagPlace(300, 42, 60)),
                Optional.of(new OrientationMark(20, 600, 15, OrientationMark.Look.COLOURED)))),
        book.layout("marked", LocalDate.of(2026, 4, 6)));
  }

  @Test
  void versionInForceIsTheLastThatHasBegun() {
    CropBook book =
        book()
            .with(
                "layouts.yaml",
                """
                layouts:
                  strip:
                    board: {width_mm: 800, length_mm: 200}
                    sites: {rows: 1, columns: 4, first_x_mm: 100, first_y_mm: 100, pitch_x_mm: 200, pitch_y_mm: 100}
                  small:
                    - from: 2026-05-01
                      board: {width_mm: 400, length_mm: 300}
                      sites: {rows: 1, columns: 2, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
                    - board: {width_mm: 400, length_mm: 300}
                      sites: {rows: 2, columns: 3, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
                """)
            .sound();
    assertEquals(2, book.layout("small", LocalDate.of(2026, 4, 30)).orElseThrow().grid().rows());
    assertEquals(1, book.layout("small", LocalDate.of(2026, 5, 1)).orElseThrow().grid().rows());
    assertEquals(Optional.empty(), book.layout("other", LocalDate.of(2026, 5, 1)));
  }

  @Test
  void versionsOfOneDayAreNamed() {
    String version =
        """
            - from: 2026-05-01
              board: {width_mm: 400, length_mm: 300}
              sites: {rows: 1, columns: 2, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
        """;
    assertEquals(
        "layouts.yaml:3:5: layouts.twice: two versions hold from 2026-05-01; give each version its"
            + " own from",
        book().with("layouts.yaml", "layouts:\n  twice:\n" + version + version).problems().get(0));
  }

  @Test
  void layoutWithNothingInForceYetHasNoVersion() {
    CropBook book =
        book()
            .change(
                "layouts.yaml",
                "  strip:",
                """
                later:
                  - from: 2026-05-01
                    board: {width_mm: 400, length_mm: 300}
                    sites: {rows: 1, columns: 2, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
                strip:\
                """
                    .indent(2)
                    .stripTrailing())
            .sound();
    assertEquals(Optional.empty(), book.layout("later", LocalDate.of(2026, 4, 30)));
  }

  @Test
  void everyFaultOfALayoutIsNamedWithItsPlace() {
    assertEquals(
        List.of(
            "layouts.yaml:3:23: layouts.bad.board.width_mm: \"12,5\" is not a number; write a dot,"
                + " as in 12.5",
            "layouts.yaml:3:31: layouts.bad.board.lenght_mm: the key \"lenght_mm\" is unknown; did"
                + " you mean \"length_mm\"? known: length_mm",
            "layouts.yaml:4:19: layouts.bad.sites.rows: \"2.5\" is not a whole number; write a"
                + " whole number from 1 to 200",
            "layouts.yaml:4:33: layouts.bad.sites.columns: \"0\" is out of range; write a number"
                + " from 1 to 200",
            "layouts.yaml:4:93: layouts.bad.sites.pitch_y_mm: \"-1\" is out of range; write a"
                + " number above 0, at most 20000"),
        book()
            .change(
                "layouts.yaml",
                "layouts:\n",
                """
                layouts:
                  bad:
                    board: {width_mm: "12,5", lenght_mm: 3}
                    sites: {rows: 2.5, columns: 0, first_x_mm: 1, first_y_mm: 1, pitch_x_mm: 1, pitch_y_mm: -1}
                """)
            .problems()
            .stream()
            .filter(p -> !p.contains("is missing"))
            .toList());
  }

  @Test
  void partsOffTheBoardAreNamed() {
    String file =
        """
        layouts:
          bad:
            board: {width_mm: 400, length_mm: 300}
            sites: {rows: 3, columns: 3, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
            markers: {side_mm: 30, centres_mm: [[30, 30], [370, 30], [370, 370], [30, 270]]}
            tag: {x_mm: -5, y_mm: 42, side_mm: 60}
            orientation_mark: {x_mm: 20, y_mm: 300.5, diameter_mm: 15, look: dark}
        """;
    assertEquals(
        List.of(
            "layouts.yaml:4:12: layouts.bad.sites: site C1 at 80, 360 mm is off the board of 400 x"
                + " 300 mm; mend the first site, the pitches, the numbers of rows and columns, or"
                + " the board",
            "layouts.yaml:5:14: layouts.bad.markers: marker 2 at 370, 370 mm is off the board of"
                + " 400 x 300 mm; measure in mm from the board's corner nearest A1",
            "layouts.yaml:6:10: layouts.bad.tag: the tag at -5, 42 mm is off the board of 400 x 300"
                + " mm; measure in mm from the board's corner nearest A1",
            "layouts.yaml:7:23: layouts.bad.orientation_mark: the mark at 20, 300.5 mm is off the"
                + " board of 400 x 300 mm; measure in mm from the board's corner nearest A1"),
        book().with("layouts.yaml", file).problems().subList(0, 4));
  }

  @Test
  void markersInTheWrongOrderAreNamed() {
    List<String> problems =
        book()
            .change(
                "layouts.yaml",
                "  strip:\n",
                "  strip:\n    markers: {family: tag16h5, side_mm: 20, centres_mm: [[30, 30], [30, 170],"
                    + " [770, 170], [770, 30]]}\n")
            .problems();
    assertEquals(
        List.of(
            "layouts.yaml:6:23: layouts.strip.markers.family: the marker family \"tag16h5\" is"
                + " unknown; known: tag36h11",
            "layouts.yaml:6:57: layouts.strip.markers.centres_mm: the centres do not go clockwise;"
                + " begin at the corner nearest A1 and go clockwise, as seen from above"),
        problems);
  }

  @Test
  void keyThatStandsTwiceIsNamed() {
    assertEquals(
        List.of(
            "layouts.yaml:5:3: layouts.small: the key stands twice, first on line 2; keep one of"
                + " the two"),
        book().change("layouts.yaml", "  strip:", "  small:").problems().subList(0, 1));
  }
}
