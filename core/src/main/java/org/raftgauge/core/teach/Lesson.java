// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.ColourTerms;
import org.raftgauge.core.canopy.EvenedPixels;
import org.raftgauge.core.canopy.GroundTerms;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.opencv.DistanceTo;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * What one labelled picture teaches: for each tissue a sample of its pixels, which stands for all
 * of them.
 *
 * <p>A picture counts by one over its leaf area, as Dice weighs it, so that seedlings count as much
 * as a full board. On open ground what lies near leaf is drawn apart: outlines are made there.
 */
public final class Lesson {
  /** Ground this near to leaf is drawn apart, px. */
  private static final float NEAR_PX = 15;

  /** Pixels drawn of a kind at most; more change the weights by less than their error. */
  private static final int MOST_PIXELS = 1500;

  /** A picture of less leaf, px, does not count for more than one of so much. */
  private static final double LEAST_LEAF_PX = 2000;

  private static final float[] NO_GROUND = {};

  /** Any; the same pixels are drawn each time. */
  private static final long SEED = 20_261;

  private final String photo;
  private final List<LitBoard> boards;
  private final Labels labels;
  private final Map<Kind, Drawn> painted = new LinkedHashMap<>();
  private final List<Pixel> pixels = new ArrayList<>();

  /** A tissue, near to leaf of open ground or not. */
  private record Kind(Tissue tissue, boolean near) {}

  /** A labelled pixel of a deck picture. */
  private record Place(int board, int x, int y, boolean inner) {}

  /** Places drawn from all of a kind: each is as likely as the other (reservoir sampling). */
  private static final class Drawn {
    private final List<Place> places = new ArrayList<>();
    private final Random random = new Random(SEED);
    private int of;

    void offer(Place place) {
      of++;
      if (places.size() < MOST_PIXELS) {
        places.add(place);
        return;
      }
      int at = random.nextInt(of);
      if (at < MOST_PIXELS) {
        places.set(at, place);
      }
    }
  }

  /** A sample. */
  static final class Pixel {
    final Tissue tissue;

    /** Coordinates of its colour; see {@link ColourTerms}. */
    final double[] colour;

    /** Terms of the look at open ground, the last 0; empty on a board. */
    final float[] ground;

    /** Whether its neighbours are painted alike, so that its colour is its own. */
    final boolean inner;

    final double weight;

    private Pixel(Tissue tissue, boolean inner, double weight, Seen seen) {
      this.tissue = tissue;
      this.inner = inner;
      this.weight = weight;
      this.colour = seen.colour;
      this.ground = seen.ground;
    }
  }

  /** What is seen at a pixel; not a record, as it holds arrays. */
  private static final class Seen {
    private final double[] colour;
    private final float[] ground;

    Seen(double[] colour, float[] ground) {
      this.colour = colour;
      this.ground = ground;
    }
  }

  private Lesson(String photo, List<LitBoard> boards, Labels labels) {
    this.photo = photo;
    this.boards = List.copyOf(boards);
    this.labels = labels;
  }

  /**
   * Draws a lesson from a photo.
   *
   * @param photo its name
   * @param boards its boards
   * @param labels what its pixels show, of the photo's size
   * @return the lesson; the same photo and labels give the same one
   */
  public static Lesson of(String photo, List<LitBoard> boards, Labels labels) {
    Lesson lesson = new Lesson(photo, boards, labels);
    for (int b = 0; b < boards.size(); b++) {
      lesson.collect(b);
    }
    lesson.draw();
    return lesson;
  }

  private void collect(int b) {
    LitBoard board = boards.get(b);
    int width = board.deck().image().width();
    int height = board.deck().image().height();
    List<Optional<Tissue>> tissues = new ArrayList<>(width * height);
    boolean[] leaf = new boolean[width * height];
    for (int i = 0; i < leaf.length; i++) {
      tissues.add(paintedAt(board, i % width, Math.floorDiv(i, width)));
      leaf[i] = tissues.get(i).filter(Tissue::isLeaf).isPresent();
    }
    boolean[] near = new boolean[leaf.length];
    if (board.openGround()) {
      float[] distance = DistanceTo.nearest(leaf, width, height);
      for (int i = 0; i < near.length; i++) {
        near[i] = !leaf[i] && distance[i] <= NEAR_PX;
      }
    }
    for (int i = 0; i < leaf.length; i++) {
      int x = i % width;
      int y = Math.floorDiv(i, width);
      if (tissues.get(i).isPresent()) {
        PointPx at = inPhoto(board, x, y);
        boolean inner = labels.isInner((int) Math.round(at.xPx()), (int) Math.round(at.yPx()));
        painted
            .computeIfAbsent(new Kind(tissues.get(i).get(), near[i]), t -> new Drawn())
            .offer(new Place(b, x, y, inner));
      }
    }
  }

  private static PointPx inPhoto(LitBoard board, int x, int y) {
    return board.pose().toPhoto(board.deck().toMm(new PointPx(x, y)));
  }

  /** Returns what a pixel of a board's deck picture was painted as. */
  Optional<Tissue> paintedAt(LitBoard board, int x, int y) {
    PointPx at = inPhoto(board, x, y);
    return board.deck().seen(x, y)
        ? labels.at((int) Math.round(at.xPx()), (int) Math.round(at.yPx()))
        : Optional.empty();
  }

  private void draw() {
    List<EvenedPixels> evened = boards.stream().map(LitBoard::pixels).toList();
    Map<Place, float[]> ground = lookAtGround();
    double leaf =
        Math.max(
            LEAST_LEAF_PX,
            painted.entrySet().stream()
                .filter(e -> e.getKey().tissue.isLeaf())
                .mapToDouble(e -> e.getValue().of)
                .sum());
    painted.forEach(
        (kind, drawn) -> {
          double weight = (double) drawn.of / drawn.places.size() / leaf;
          for (Place p : drawn.places) {
            double[] colour = ColourTerms.coordinates(evened.get(p.board).at(p.x, p.y));
            float[] terms = ground.getOrDefault(p, NO_GROUND);
            pixels.add(new Pixel(kind.tissue, p.inner, weight, new Seen(colour, terms)));
          }
        });
  }

  /** Returns the terms of the drawn places on open ground. */
  private Map<Place, float[]> lookAtGround() {
    Map<Place, float[]> ground = new HashMap<>();
    for (int b = 0; b < boards.size(); b++) {
      int board = b;
      DeckImage deck = boards.get(b).deck();
      if (boards.get(b).openGround()) {
        List<Place> here =
            painted.values().stream()
                .flatMap(d -> d.places.stream())
                .filter(p -> p.board == board)
                .toList();
        int width = deck.image().width();
        float[][] terms =
            GroundTerms.of(deck, here.stream().mapToInt(p -> p.y * width + p.x).toArray());
        for (int i = 0; i < terms.length; i++) {
          ground.put(here.get(i), terms[i]);
        }
      }
    }
    return ground;
  }

  /** Returns the photo's name. */
  public String photo() {
    return photo;
  }

  /** Returns its boards. */
  List<LitBoard> boards() {
    return boards;
  }

  List<Pixel> pixels() {
    return Collections.unmodifiableList(pixels);
  }

  /**
   * Counts the pixels painted as a tissue on its boards.
   *
   * @param tissue the tissue
   * @return pixels of deck pictures
   */
  public int painted(Tissue tissue) {
    return painted.entrySet().stream()
        .filter(e -> e.getKey().tissue == tissue)
        .mapToInt(e -> e.getValue().of)
        .sum();
  }
}
