// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.Cielab;
import org.raftgauge.core.pixels.PointPx;

/**
 * Tells canopy that is no plant of the hole it was given to, and takes it from the site: specks too
 * small for a seedling, the hole's shaded rim about an open middle, a dull disc as round as the
 * hole, which is a mossy plug, and what is smaller than the hole and nowhere near it: a tip of a
 * neighbour's leaf that glare has cut off. A plant grows out of the middle, soon reaches past the
 * rim, and has leaves.
 */
final class BareHoles {
  /** A speck covers less than this share of its hole (working value; cotyledons cover 6 %). */
  private static final double SPECK = 0.02;

  /** What is only a hole ends within this many of its radii. */
  private static final double WITHIN = 1.35;

  /** A rim lies beyond this share of the radius. */
  private static final double RIM = 0.75;

  /** Directions about the hole that are told apart, and in how many a rim shows at least. */
  private static final int DIRECTIONS = 16;

  private static final int RIM_DIRECTIONS = 12;

  /** A plug fills at least this share of its hole. */
  private static final double PLUG = 0.45;

  /** Second moment of area over that of the disc of the same area, 1 for a disc. */
  private static final double ROUND = 1.06;

  /** A plug lies within this share of the radius from the hole's middle. */
  private static final double CENTRED = 0.2;

  /** In smaller holes a few pixels of any shape look round. */
  private static final double LEAST_RADIUS_PX = 5;

  /** What this share of pixels does is not counted. */
  private static final double FEW = 0.05;

  /** Wet plugs and moss are darker and duller than this, a leaf on them is not: CIELAB. */
  private static final double DARK_L = 40;

  private static final double DULL_CHROMA = 20;

  private final Ground ground;
  private final Canopy canopy;
  private final SiteColour colours;
  private final double radiusPx;

  BareHoles(Ground ground, Canopy canopy, SiteColour colours) {
    this.ground = ground;
    this.canopy = canopy;
    this.colours = colours;
    this.radiusPx = 0.5 * ground.layout().grid().holeMm() / ground.deck().mmPerPx();
  }

  /** Returns the area under which canopy at a site is not believed to be a plant, cm2. */
  static double speckCm2(SiteGrid grid) {
    return SPECK * Math.PI * grid.holeMm() * grid.holeMm() / 400;
  }

  /** What lies about a hole, px from the hole's middle. */
  private static final class About {
    private int pixels;
    private int inner;
    private int beyond;
    private double sumX;
    private double sumY;
    private double sumSquares;
    private final int[] box = {Integer.MAX_VALUE, Integer.MAX_VALUE, -1, -1};
    private final double holeX;
    private final double holeY;

    About(PointPx hole) {
      this.holeX = hole.xPx();
      this.holeY = hole.yPx();
    }
  }

  /** Changes the owner of what is no plant to nobody, in place. */
  void clear(short[] owner) {
    About[] about = about(owner);
    boolean[] bare = new boolean[about.length];
    for (int s = 0; s < bare.length; s++) {
      bare[s] = about[s].pixels > 0 && bare(s, about[s], owner);
    }
    for (int i = 0; i < owner.length; i++) {
      owner[i] = owner[i] != AllotCanopy.NONE && bare[owner[i]] ? AllotCanopy.NONE : owner[i];
    }
  }

  private boolean bare(int site, About about, short[] owner) {
    double hole = Math.PI * radiusPx * radiusPx;
    if (about.pixels < SPECK * hole || (about.beyond == about.pixels && about.pixels < hole)) {
      return true;
    }
    return about.beyond <= FEW * about.pixels
        && (rim(site, about, owner) || (plug(about, hole) && dull(site, about, owner)));
  }

  private boolean rim(int site, About about, short[] owner) {
    return about.inner < FEW * about.pixels
        && Integer.bitCount(directions(site, about, owner)) >= RIM_DIRECTIONS;
  }

  /** Returns the directions in which something lies beyond where a rim begins, one bit each. */
  private int directions(int site, About about, short[] owner) {
    int directions = 0;
    for (int y = about.box[1]; y <= about.box[3]; y++) {
      for (int x = about.box[0]; x <= about.box[2]; x++) {
        int i = y * canopy.width() + x;
        double dx = x - about.holeX;
        double dy = y - about.holeY;
        if (owner[i] == site
            && canopy.coverage()[i] < 0
            && dx * dx + dy * dy >= RIM * RIM * radiusPx * radiusPx) {
          double turn = Math.atan2(dy, dx) / (2 * Math.PI) + 0.5;
          directions |= 1 << (int) (turn * DIRECTIONS) % DIRECTIONS;
        }
      }
    }
    return directions;
  }

  private boolean plug(About about, double hole) {
    double n = about.pixels;
    double x = about.sumX / n;
    double y = about.sumY / n;
    double moment = about.sumSquares - n * (x * x + y * y) + n / 6; // a pixel's own is 1 / 6
    return radiusPx >= LEAST_RADIUS_PX
        && n > PLUG * hole
        && moment * 2 * Math.PI / (n * n) < ROUND
        && Math.hypot(x, y) < CENTRED * radiusPx;
  }

  private boolean dull(int site, About about, short[] owner) {
    double a = 0;
    double b = 0;
    int bright = 0;
    for (int y = about.box[1]; y <= about.box[3]; y++) {
      for (int x = about.box[0]; x <= about.box[2]; x++) {
        int i = y * canopy.width() + x;
        if (owner[i] == site && canopy.coverage()[i] < 0) {
          Cielab colour = colours.evened(x, y);
          a += colour.a();
          b += colour.b();
          bright += colour.l() > DARK_L ? 1 : 0;
        }
      }
    }
    return bright < FEW * about.pixels && Math.hypot(a, b) < DULL_CHROMA * about.pixels;
  }

  private About[] about(short[] owner) {
    List<SiteId> sites = ground.sites();
    About[] about = new About[sites.size()];
    for (int s = 0; s < about.length; s++) {
      about[s] = new About(ground.deck().toPx(ground.layout().grid().centre(sites.get(s))));
    }
    byte[] coverage = canopy.coverage();
    for (int y = 0, i = 0; y < canopy.height(); y++) {
      for (int x = 0; x < canopy.width(); x++, i++) {
        if (owner[i] != AllotCanopy.NONE && coverage[i] < 0) {
          add(about[owner[i]], x, y);
        }
      }
    }
    return about;
  }

  private void add(About about, int x, int y) {
    double dx = x - about.holeX;
    double dy = y - about.holeY;
    double square = dx * dx + dy * dy;
    about.pixels++;
    about.sumX += dx;
    about.sumY += dy;
    about.sumSquares += square;
    about.beyond += square > WITHIN * WITHIN * radiusPx * radiusPx ? 1 : 0;
    about.inner += square < RIM * RIM * radiusPx * radiusPx ? 1 : 0;
    about.box[0] = Math.min(about.box[0], x);
    about.box[1] = Math.min(about.box[1], y);
    about.box[2] = Math.max(about.box[2], x);
    about.box[3] = Math.max(about.box[3], y);
  }
}
