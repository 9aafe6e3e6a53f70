// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes the accuracy page and fills the README's place for it. */
public final class AccuracyPage {
  private static final String BEGIN = "<!-- accuracy:begin -->";
  private static final String END = "<!-- accuracy:end -->";
  private static final String HOW =
      "\"Open\" is by the truth: at least 98 % of the plant is visible from above; never by the"
          + " program's own flag. Errors are |measured - true| / true of the projected leaf area of"
          + " open sites, of the visible area of overlapped ones. A site that is held, refused or"
          + " flagged closed though it is open is a miss: up to 3 % of a row's sites for free, every"
          + " further one counts as an error of 100 %. The plain script is index, threshold and"
          + " nearest hole, with the exact pose given to it.\n";

  private AccuracyPage() {}

  /**
   * Writes the page.
   *
   * @param stamp what was measured, such as commit and seed
   * @param sections its parts
   * @return the Markdown text
   */
  public static String page(String stamp, List<Section> sections) {
    StringBuilder page = new StringBuilder("# Accuracy\n\n");
    page.append("Made by `batch/proving/prove report`; ").append(stamp).append(".\n\n").append(HOW);
    for (Section section : sections) {
      page.append("\n## ").append(section.title()).append("\n\n");
      page.append(section.body().strip()).append('\n');
    }
    return page.toString();
  }

  /**
   * Writes the README's table.
   *
   * @param stamp as for the page
   * @param sections its parts
   * @return the Markdown text
   */
  public static String summary(String stamp, List<Section> sections) {
    StringBuilder table = new StringBuilder(SummaryRows.HEAD);
    sections.forEach(section -> table.append(section.summary()));
    return table.append('\n').append(Character.toUpperCase(stamp.charAt(0)))
        + stamp.substring(1)
        + ".\n";
  }

  /**
   * Replaces what stands between the README's markers.
   *
   * @param readme the file
   * @param summary the new text
   * @throws IOException if it cannot be read, written, or has not one pair of markers
   */
  public static void fill(Path readme, String summary) throws IOException {
    String text = Files.readString(readme);
    int begin = text.indexOf(BEGIN);
    int end = text.indexOf(END);
    if (begin < 0 || end < begin) {
      throw new IOException(readme + " has no " + BEGIN + " before an " + END);
    }
    Files.writeString(
        readme, text.substring(0, begin + BEGIN.length()) + "\n" + summary + text.substring(end));
  }

  /**
   * Replaces one section of a page, or adds it at the end.
   *
   * @param page the page's file
   * @param section the new text
   * @throws IOException if it cannot be read or written
   */
  public static void replace(Path page, Section section) throws IOException {
    String text = Files.readString(page);
    String heading = "\n## " + section.title() + "\n";
    int begin = text.indexOf(heading);
    int end = begin < 0 ? -1 : text.indexOf("\n## ", begin + heading.length());
    String before = begin < 0 ? text : text.substring(0, begin);
    String after = end < 0 ? "" : text.substring(end);
    Files.writeString(page, before + heading + "\n" + section.body().strip() + "\n" + after);
  }
}
