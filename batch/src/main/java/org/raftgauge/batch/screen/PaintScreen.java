// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Paints a signal on a terminal: sign and word as large as they can be, the advice below. */
public final class PaintScreen {
  private static final String FULL = "█";
  private static final String UPPER = "▀";
  private static final String LOWER = "▄";
  private static final String RESET = "\u001b[0m";

  /** Letters of a word so long are still read across a room; longer ones go on two lines. */
  private static final int LONGEST_LINE = 7;

  /** Share of the height for the sign. */
  private static final double SIGN = 0.36;

  private final Size size;

  /**
   * The terminal.
   *
   * @param columns letters across, at least 20
   * @param rows lines, at least 8
   */
  public record Size(int columns, int rows) {

    /** Keeps to what can be painted. */
    public Size {
      columns = Math.max(20, columns);
      rows = Math.max(8, rows);
    }
  }

  private PaintScreen(Size size) {
    this.size = size;
  }

  /**
   * Paints.
   *
   * @param signal what is told
   * @param size the terminal's
   * @param foot a line at the lower edge
   * @return the text that fills the terminal, with its colours; no line end after the last line
   */
  public static String of(Signal signal, Size size, String foot) {
    List<String> lines = new PaintScreen(size).lines(signal, foot);
    String colour = colour(signal.kind());
    StringBuilder screen = new StringBuilder("\u001b[H");
    for (int i = 0; i < lines.size(); i++) {
      screen.append(colour).append(lines.get(i)).append(RESET);
      screen.append(i + 1 < lines.size() ? "\r\n" : "");
    }
    return screen.toString();
  }

  /** Returns the lines without colours, each as wide as the terminal. */
  static List<String> plain(Signal signal, Size size, String foot) {
    return new PaintScreen(size).lines(signal, foot);
  }

  /** White on blue for good, black on yellow to act, white on black to wait: no red, no green. */
  private static String colour(Signal.Kind kind) {
    return switch (kind) {
      case GOOD -> "\u001b[1;97;44m";
      case ACT -> "\u001b[30;103m";
      case WAIT -> "\u001b[97;40m";
    };
  }

  private List<String> lines(Signal signal, String foot) {
    List<String> advice = wrap(signal.advice(), size.columns() - 4);
    advice = advice.subList(0, Math.min(3, advice.size()));
    int pictureRows = size.rows() - advice.size() - 2;
    List<String> lines = new ArrayList<>(picture(signal, pictureRows));
    lines.add(" ".repeat(size.columns()));
    advice.forEach(line -> lines.add(middle(line)));
    lines.add(middle(foot));
    return lines;
  }

  private List<String> picture(Signal signal, int rows) {
    double width = size.columns() - 4;
    double height = 2.0 * rows - 2;
    Area all = new Area();
    Area sign = fitted(Sign.of(signal.kind()), width, SIGN * height);
    all.add(centred(sign, width, 0));
    String[] words = words(signal.word());
    double room = (1 - SIGN) * height;
    double each = room / words.length;
    for (int i = 0; i < words.length; i++) {
      Area word = fitted(BigWord.outline(words[i]), width, 0.82 * each);
      all.add(centred(word, width, SIGN * height + each * i + 0.18 * each));
    }
    all.transform(AffineTransform.getTranslateInstance(2, 1));
    return raster(all, rows);
  }

  private static String[] words(String word) {
    return word.length() <= LONGEST_LINE ? new String[] {word} : word.split(" ", -1);
  }

  private static Area fitted(Shape shape, double width, double height) {
    Shape placed = BigWord.atOrigin(shape);
    Rectangle2D box = placed.getBounds2D();
    double scale = Math.min(width / box.getWidth(), height / box.getHeight());
    return new Area(AffineTransform.getScaleInstance(scale, scale).createTransformedShape(placed));
  }

  private static Area centred(Area shape, double width, double top) {
    double x = (width - shape.getBounds2D().getWidth()) / 2;
    return shape.createTransformedArea(AffineTransform.getTranslateInstance(x, top));
  }

  /**
   * Fills half lines whose middle lies inside; a half line is about as high as a letter is wide.
   */
  private List<String> raster(Area shape, int rows) {
    List<String> lines = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      StringBuilder line = new StringBuilder();
      for (int column = 0; column < size.columns(); column++) {
        boolean upper = shape.contains(column + 0.5, 2 * row + 0.5);
        boolean lower = shape.contains(column + 0.5, 2 * row + 1.5);
        line.append(upper && lower ? FULL : upper ? UPPER : lower ? LOWER : " ");
      }
      lines.add(line.toString());
    }
    return lines;
  }

  private String middle(String text) {
    String shown = text.length() > size.columns() ? text.substring(0, size.columns()) : text;
    int left = (size.columns() - shown.length()) / 2;
    return " ".repeat(left) + shown + " ".repeat(size.columns() - left - shown.length());
  }

  private static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
