// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.LensReport;
import org.raftgauge.core.calibrate.PictureZone;
import org.raftgauge.core.calibrate.ViewFit;
import org.raftgauge.core.pixels.PointPx;

/**
 * Draws where in the picture a calibration's points lie: a dot a point, a line for the way from
 * where it was seen to where the lens puts it, enlarged, and the corner zones, filled where bare.
 *
 * <p>Colours: Okabe and Ito 2008, told apart with any kind of colour vision.
 */
public final class CoverageMap {
  private static final int WIDTH_PX = 1000;
  private static final int MARGIN_PX = 24;
  private static final int LINE_PX = 26;
  private static final double ENLARGED = 40;
  private static final Color BLUE = new Color(0x0072B2);
  private static final Color VERMILLION = new Color(0xD55E00);
  private static final Color BARE = new Color(0xF5D0B5);
  private static final Color GREY = new Color(0x888888);

  private final LensFit fit;
  private final double scale;
  private final Graphics2D graphics;

  private CoverageMap(LensFit fit, Graphics2D graphics) {
    this.fit = fit;
    this.graphics = graphics;
    this.scale = (WIDTH_PX - 2.0 * MARGIN_PX) / fit.widthPx();
  }

  /**
   * Draws the map.
   *
   * @param report the calibration
   * @param fit its lens
   * @return the picture
   */
  public static BufferedImage draw(LensReport report, LensFit fit) {
    int high = (int) Math.ceil((WIDTH_PX - 2.0 * MARGIN_PX) * fit.heightPx() / fit.widthPx());
    BufferedImage picture =
        new BufferedImage(WIDTH_PX, high + 2 * MARGIN_PX + 3 * LINE_PX, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = picture.createGraphics();
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, picture.getWidth(), picture.getHeight());
    CoverageMap map = new CoverageMap(fit, graphics);
    map.zones();
    map.frame(high);
    map.points();
    map.caption(report, high + 2 * MARGIN_PX);
    graphics.dispose();
    return picture;
  }

  private void zones() {
    for (PictureZone zone : PictureZone.values()) {
      long points =
          fit.views().stream()
              .flatMap(v -> v.misses().stream())
              .filter(m -> zone.has(m.seen(), fit.widthPx(), fit.heightPx()))
              .count();
      Rectangle2D box = box(zone);
      if (points < 4) {
        graphics.setColor(BARE);
        graphics.fill(box);
      }
      graphics.setColor(GREY);
      graphics.setStroke(
          new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1, new float[] {5}, 0));
      graphics.draw(box);
    }
  }

  private Rectangle2D box(PictureZone zone) {
    double w = fit.widthPx() * scale / 4;
    double h = fit.heightPx() * scale / 4;
    boolean right = zone == PictureZone.TOP_RIGHT || zone == PictureZone.BOTTOM_RIGHT;
    boolean bottom = zone == PictureZone.BOTTOM_LEFT || zone == PictureZone.BOTTOM_RIGHT;
    return new Rectangle2D.Double(
        MARGIN_PX + (right ? 3 * w : 0), MARGIN_PX + (bottom ? 3 * h : 0), w, h);
  }

  private void frame(int high) {
    graphics.setColor(Color.BLACK);
    graphics.setStroke(new BasicStroke(2));
    graphics.drawRect(MARGIN_PX, MARGIN_PX, WIDTH_PX - 2 * MARGIN_PX, high);
  }

  private void points() {
    for (ViewFit view : fit.views()) {
      for (ViewFit.Miss miss : view.misses()) {
        double x = x(miss.seen());
        double y = y(miss.seen());
        graphics.setColor(VERMILLION);
        graphics.setStroke(new BasicStroke(1.2f));
        graphics.draw(
            new Line2D.Double(
                x,
                y,
                x + ENLARGED * (x(miss.foretold()) - x),
                y + ENLARGED * (y(miss.foretold()) - y)));
        graphics.setColor(BLUE);
        graphics.fill(new Ellipse2D.Double(x - 2, y - 2, 4, 4));
      }
    }
  }

  private double x(PointPx p) {
    return MARGIN_PX + (p.xPx() + 0.5) * scale;
  }

  private double y(PointPx p) {
    return MARGIN_PX + (p.yPx() + 0.5) * scale;
  }

  private void caption(LensReport report, int top) {
    graphics.setColor(Color.BLACK);
    graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 17));
    List<String> lines =
        List.of(
            String.format(
                Locale.ROOT,
                "%d photos of %d x %d px; mean miss %.3f px; lines: misses, %.0f times enlarged",
                fit.views().size(),
                fit.widthPx(),
                fit.heightPx(),
                fit.meanErrorPx(),
                ENLARGED),
            "corner zones with too few points are filled"
                + (report.good() ? "; verdict: good" : ""),
            report.good() ? "" : "verdict: not good yet; the station file says why");
    for (int i = 0; i < lines.size(); i++) {
      graphics.drawString(lines.get(i), MARGIN_PX, top + LINE_PX * i + LINE_PX / 2);
    }
  }
}
