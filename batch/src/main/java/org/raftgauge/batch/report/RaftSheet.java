// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.List;

/**
 * All that the page shows of a raft, as texts ready to be shown.
 *
 * @param head who it is and how it stands
 * @param facts what else is known of it
 * @param measured how its numbers came about
 * @param board its board, none where the book does not know the layout
 * @param sites the sites that something is said of, in order
 * @param others those of which nothing amiss was found, each with its area
 * @param untold those of which cannot be told yet how they stand, each with its area
 * @param overlay the overlay of its latest photo, or empty
 * @param heights the picture of its heights in that photo, or empty
 * @param plots its growth plots, one for each crop or lot on it
 * @param heads plots of its predicted head weights
 * @param diary its dated pictures, oldest first
 * @param closeUps the sites to look at, cut out of its latest picture where there is one
 */
public record RaftSheet(
    Head head,
    List<ReportModel.Fact> facts,
    List<ReportModel.Fact> measured,
    List<BoardMap> board,
    List<SiteLine> sites,
    List<String> others,
    List<String> untold,
    String overlay,
    String heights,
    List<Plot> plots,
    List<Plot> heads,
    List<DiaryDay> diary,
    List<CloseUp> closeUps) {

  /**
   * A plot.
   *
   * @param file its path below the run folder
   * @param words the plot in words
   */
  public record Plot(String file, String words) {}

  /**
   * Who a raft is and how it stands.
   *
   * @param raft its id
   * @param anchor its place on the page
   * @param pond the pond, or empty
   * @param berth the berth, or empty
   * @param crop crops and varieties
   * @param age days since transplant, or from sowing and said so, or empty
   * @param mark what was said of it
   * @param state that in words, or when it was last seen
   * @param worst the most urgent mark among its sites
   * @param evidence why
   * @param share its share of what is expected, percent, or empty
   * @param median leaf area of its median plant, or empty
   * @param toLookAt number of its sites to look at
   * @param seenOn the evening of its latest photo
   * @param seenDay the same as ISO 8601, to sort by
   * @param tonight whether that is the latest evening of the run
   */
  public record Head(
      String raft,
      String anchor,
      String pond,
      String berth,
      String crop,
      String age,
      Mark mark,
      String state,
      Mark worst,
      String evidence,
      String share,
      String median,
      int toLookAt,
      String seenOn,
      String seenDay,
      boolean tonight) {}

  /**
   * A board seen from above, mm, in few elements: a page may hold hundreds.
   *
   * @param widthMm along its columns
   * @param lengthMm along its rows
   * @param markMm size of a site's mark
   * @param layers the sites of each mark
   * @param labels row letters, column numbers and names of the sites to look at
   * @param words the board in a sentence
   */
  public record BoardMap(
      double widthMm,
      double lengthMm,
      double markMm,
      List<Layer> layers,
      List<Label> labels,
      String words) {}

  /**
   * All sites of one mark.
   *
   * @param mark the mark
   * @param path their shapes, SVG path data
   * @param letters their letters
   * @param xs places of the letters, separated by blanks
   * @param ys places of the letters
   */
  public record Layer(Mark mark, String path, String letters, String xs, String ys) {}

  /**
   * A text on the board.
   *
   * @param text the text
   * @param xMm its middle
   * @param yMm its foot
   */
  public record Label(String text, double xMm, double yMm) {}

  /**
   * A site in the table.
   *
   * @param site its name
   * @param mark what was said of it
   * @param area its leaf area with its error, or empty
   * @param share its share of what is expected, percent, or empty
   * @param why the reason
   */
  public record SiteLine(String site, Mark mark, String area, String share, String why) {}

  /**
   * A day in a raft's diary.
   *
   * @param date the evening
   * @param age days since transplant, or empty
   * @param median leaf area of the median plant, or empty
   * @param picture its board, or empty
   * @param overlay the overlay, or empty
   * @param daysSince days since the day before it in the diary; 0 for the first
   * @param events what the book says happened since then
   */
  public record DiaryDay(
      String date,
      String age,
      String median,
      String picture,
      String overlay,
      long daysSince,
      List<String> events) {

    /** Copies the list. */
    public DiaryDay {
      events = List.copyOf(events);
    }
  }

  /**
   * A site cut out of its board's picture; lengths are percent of the frame's side.
   *
   * @param site its name
   * @param mark what was said of it
   * @param why the reason
   * @param picture the board's picture; empty where there is none
   * @param widthPercent width of the whole picture
   * @param leftPercent left edge of the picture
   * @param topPercent upper edge of the picture
   */
  public record CloseUp(
      String site,
      Mark mark,
      String why,
      String picture,
      double widthPercent,
      double leftPercent,
      double topPercent) {}
}
