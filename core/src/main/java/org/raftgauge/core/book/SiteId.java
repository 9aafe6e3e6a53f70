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
    int letters = 0;
    int row = 0;
    while (letters < text.length() && letter(text.charAt(letters)) > 0) {
      row = row * 26 + letter(text.charAt(letters++));
    }
    int digits = text.length() - letters;
    int number = 0;
    boolean sound = letters >= 1 && letters <= 2 && digits >= 1 && digits <= 4;
    for (int i = letters; sound && i < text.length(); i++) {
      int digit = text.charAt(i) - '0';
      sound = digit >= 0 && digit <= 9 && (digit > 0 || i > letters);
      number = number * 10 + digit;
    }
    if (!sound) {
      throw new IllegalArgumentException(
          "site must be row letters and a column number such as B12, got \"" + text + "\"");
    }
    return new SiteId(row - 1, number - 1);
  }

  /** Returns 1 for A or a, up to 26; 0 for what is no letter. */
  private static int letter(char c) {
    int upper = c >= 'a' ? c - 'a' : c - 'A';
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ? upper + 1 : 0;
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
