// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.ColourTerms;
import org.raftgauge.core.canopy.EvenedPixels;
import org.raftgauge.core.canopy.GroundTerms;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.pixels.PointPx;

/**
 * What one labelled picture teaches: for each tissue a sample of its pixels, which stands for all
 * of them.
 *
 * <p>A picture counts by one over its leaf area, as Dice weighs it, so that seedlings count as much
 * as a full board.
 */
public final class Lesson {
  /** Pixels drawn for a tissue at most; more change the weights by less than their error. */
  private static final int MOST_PIXELS = 1500;

  /** A picture of less leaf, px, does not count for more than one of so much. */
  private static final double LEAST_LEAF_PX = 2000;

  /** Any; the same pixels are drawn each time. */
  private static final long SEED = 20_261;

  private final String photo;
  private final List<LitBoard> boards;
  private final Labels labels;
  private final Map<Tissue, Drawn> painted = new EnumMap<>(Tissue.class);
  private final List<Pixel> pixels = new ArrayList<>();

  /** A labelled pixel of a deck picture. */
  private record Place(int board, int x, int y, boolean inner) {}

  /** Places drawn from all of a tissue: each is as likely as the other (reservoir sampling). */
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

    /** Terms of the second look at open ground; empty on a board. */
    final double[] ground;

    /** Whether its neighbours are painted alike, so that its colour is its own. */
    final boolean inner;

    final double weight;

    private Pixel(Tissue tissue, double[][] seen, boolean inner, double weight) {
      this.tissue = tissue;
      this.colour = seen[0];
      this.ground = seen[1];
      this.inner = inner;
      this.weight = weight;
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
    for (int y = 0; y < board.deck().image().height(); y++) {
      for (int x = 0; x < board.deck().image().width(); x++) {
        PointPx at = inPhoto(board, x, y);
        int px = (int) Math.round(at.xPx());
        int py = (int) Math.round(at.yPx());
        Optional<Tissue> tissue = labels.at(px, py);
        if (board.deck().seen(x, y) && tissue.isPresent()) {
          painted
              .computeIfAbsent(tissue.get(), t -> new Drawn())
              .offer(new Place(b, x, y, labels.isInner(px, py)));
        }
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
    List<Optional<GroundTerms>> ground =
        boards.stream()
            .map(b -> b.openGround() ? Optional.of(GroundTerms.of(b.deck())) : none())
            .toList();
    double leaf =
        Math.max(
            LEAST_LEAF_PX,
            painted.entrySet().stream()
                .filter(e -> e.getKey().isLeaf())
                .mapToDouble(e -> e.getValue().of)
                .sum());
    painted.forEach(
        (tissue, drawn) -> {
          double weight = (double) drawn.of / drawn.places.size() / leaf;
          for (Place p : drawn.places) {
            double[] terms = ground.get(p.board).map(g -> g.at(p.x, p.y)).orElse(new double[0]);
            double[] colour = ColourTerms.coordinates(evened.get(p.board).at(p.x, p.y));
            pixels.add(new Pixel(tissue, new double[][] {colour, terms}, p.inner, weight));
          }
        });
  }

  private static Optional<GroundTerms> none() {
    return Optional.empty();
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
    return painted.containsKey(tissue) ? painted.get(tissue).of : 0;
  }
}
