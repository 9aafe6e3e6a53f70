// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/**
 * Names a planting hole: row letters and column number, {@code A1} nearest the board's origin
 * corner, rows past Z are AA, AB.
 *
 * @param row 0 for row A
 * @param column 0 for column 1
 */
public record SiteId(int row, int column) implements Comparable<SiteId> {

  /** Checks that both are at least 0. */
  public SiteId {
    if (row < 0 || column < 0) {
      throw new IllegalArgumentException("row and column must be >= 0, got " + row + ", " + column);
    }
  }

  /**
   * Reads a site's name.
   *
   * @param text such as {@code B12}, upper or lower case
   * @return the site
   * @throws IllegalArgumentException if the text is not letters followed by a number from 1
   */
  public static SiteId parse(String text) {
    if (!text.matches("[A-Za-z]{1,2}[1-9][0-9]{0,3}")) {
      throw new IllegalArgumentException(
          "site must be row letters and a column number such as B12, got \"" + text + "\"");
    }
    int row = 0;
    int i = 0;
    for (; Character.isLetter(text.charAt(i)); i++) {
      row = row * 26 + (Character.toUpperCase(text.charAt(i)) - 'A' + 1);
    }
    return new SiteId(row - 1, Integer.parseInt(text.substring(i)) - 1);
  }

  @Override
  public int compareTo(SiteId other) {
    return row != other.row
        ? Integer.compare(row, other.row)
        : Integer.compare(column, other.column);
  }

  /** Returns the name, which {@link #parse} reads back. */
  @Override
  public String toString() {
    StringBuilder letters = new StringBuilder();
    for (int left = row + 1; left > 0; left = (left - 1) / 26) {
      letters.insert(0, (char) ('A' + (left - 1) % 26));
    }
    return letters.append(column + 1).toString();
  }
}
