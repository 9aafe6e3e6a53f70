// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.camera.Camera;

/**
 * The yardstick: what a practised user would script in an afternoon. The exact pose is given to it.
 * Rectify to 1 mm/px, excess green 2G - R - B, Otsu's threshold, 3 x 3 opening and closing, every
 * canopy pixel to the nearest hole. No parallax, no other crop's colour, no doubt.
 *
 * <p>Sources: excess green, Woebbecke et al. 1995, on 8-bit values; threshold, Otsu 1979.
 */
public final class PlainScript {
  private static final String HEADER = "photo,raft,site,projected_area_cm2,visible_area_cm2,closed";

  private PlainScript() {}

  /**
   * Measures every raft of a rendered set.
   *
   * @param set the set's folder, with {@code poses.csv} and {@code photos/}
   * @return the lines of a file with the columns of {@code sites.csv} that the score needs
   * @throws IOException if a file cannot be read
   */
  public static List<String> measure(Path set) throws IOException {
    return measure(set.resolve("photos"), PosedRaft.readCsv(set.resolve("poses.csv")));
  }

  /**
   * Measures rafts whose exact poses are known.
   *
   * @param photos the photo folder
   * @param rafts the rafts; those of a photo stand together
   * @return the lines of a file with the columns of {@code sites.csv} that the score needs
   * @throws IOException if a photo cannot be read
   */
  public static List<String> measure(Path photos, List<PosedRaft> rafts) throws IOException {
    List<String> lines = new ArrayList<>(List.of(HEADER));
    Map<String, BufferedImage> last = new HashMap<>();
    for (PosedRaft raft : rafts) {
      if (!last.containsKey(raft.photo())) {
        last.clear();
        last.put(raft.photo(), ImageIO.read(photos.resolve(raft.photo()).toFile()));
      }
      BufferedImage photo = last.get(raft.photo());
      Camera camera = raft.camera(photo.getWidth(), photo.getHeight());
      Map<SiteId, Double> areas = areasCm2(photo, camera, raft.layout());
      for (SiteId site : raft.layout().grid().sites()) {
        lines.add(row(raft, site, areas.getOrDefault(site, 0.0)));
      }
    }
    return lines;
  }

  private static String row(PosedRaft raft, SiteId site, double areaCm2) {
    return String.format(
        Locale.ROOT, "%s,%s,%s,%.3f,%.3f,false", raft.photo(), raft.raft(), site, areaCm2, areaCm2);
  }

  /**
   * Measures one raft.
   *
   * @param photo the photo
   * @param camera its exact camera, in the board's frame
   * @param layout the board
   * @return cm2 by site; sites without canopy are left out
   */
  static Map<SiteId, Double> areasCm2(BufferedImage photo, Camera camera, Layout layout) {
    int width = (int) Math.round(layout.board().widthMm());
    int height = (int) Math.round(layout.board().lengthMm());
    int[] excess = new int[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        excess[y * width + x] = excessGreen(photo, camera.project(x + 0.5, y + 0.5, 0));
      }
    }
    boolean[] canopy = PlainMask.openAndClose(PlainMask.aboveOtsu(excess), width);
    Map<SiteId, Double> areas = new HashMap<>();
    for (int i = 0; i < canopy.length; i++) {
      if (canopy[i]) {
        int row = i / width;
        areas.merge(nearest(layout, i % width + 0.5, row + 0.5), 0.01, Double::sum);
      }
    }
    return areas;
  }

  private static int excessGreen(BufferedImage photo, double[] at) {
    int x = (int) Math.max(0, Math.min(photo.getWidth() - 1, Math.round(at[0])));
    int y = (int) Math.max(0, Math.min(photo.getHeight() - 1, Math.round(at[1])));
    int rgb = photo.getRGB(x, y);
    return 2 * (rgb >> 8 & 0xff) - (rgb >> 16 & 0xff) - (rgb & 0xff);
  }

  private static SiteId nearest(Layout layout, double x, double y) {
    SiteId best = new SiteId(0, 0);
    double least = Double.MAX_VALUE;
    for (SiteId site : layout.grid().sites()) {
      PointMm centre = layout.grid().centre(site);
      double distance = Math.hypot(x - centre.xMm(), y - centre.yMm());
      if (distance < least) {
        least = distance;
        best = site;
      }
    }
    return best;
  }
}
