// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Proposes slots: boards of known layouts that lie side by side under a camera of known lens and
 * about known height, straight or turned by quarters, to 4 degrees.
 *
 * <p>On a coarse map of the deck every rectangle of a board's size is scored by how much of its
 * outline is an edge; the best that do not overlap are then placed on their own edges. Limits are
 * working values.
 */
public final class ProposeSlots {
  private static final double MOST_TURN_DEG = 4;

  /** Water level and tape measure: the height may be off by that share, in steps. */
  private static final double[] SCALES = {0.97, 0.985, 1, 1.015, 1.03};

  private static final double LEAST_MEAN = 0.5;
  private static final double LEAST_SIDE = 0.2;
  private static final double REACH_MM = 25;
  private static final double PLACED_MEAN = 0.45;

  /** Boards on one pond float level with each other to that share of the camera's height. */
  private static final double LEVEL_ERROR = 0.004;

  private static final double OVERLAP = 0.03;
  private static final int MOST = 60;

  private final RgbImage photo;
  private final LinearLight light;
  private final FitPose.Prior prior;

  private ProposeSlots(RgbImage photo, FitPose.Prior prior) {
    this.photo = photo;
    this.light = LinearLight.of(photo);
    this.prior = prior;
  }

  /**
   * Proposes slots.
   *
   * @param photo a photo with the boards in their places
   * @param station its lens and camera height are used
   * @param layouts the layouts that boards may have
   * @return the boards found, from the top left to the bottom right; none where the photo is not
   *     the station's
   */
  public static List<SlotProposal> in(RgbImage photo, Station station, List<Layout> layouts) {
    Optional<Lens> lens = FindBoards.lensFor(photo, station);
    if (lens.isEmpty()) {
      return List.of();
    }
    FitPose.Prior prior = new FitPose.Prior(lens.get(), station.cameraHeightMm(), 0.03, 4);
    return new ProposeSlots(photo, prior).find(layouts);
  }

  /** A rectangle of the coarse map that may be a board. */
  private record Candidate(Layout layout, CameraPose pose, double score, double[] outlineMm) {}

  private List<SlotProposal> find(List<Layout> layouts) {
    List<Candidate> candidates = new ArrayList<>();
    double best = 0;
    for (double turnDeg = -MOST_TURN_DEG; turnDeg <= MOST_TURN_DEG; turnDeg++) {
      List<Candidate> some = turned(turnDeg, layouts);
      double score = chosen(some).stream().mapToDouble(Candidate::score).sum();
      if (score > best) {
        best = score;
        candidates = some;
      }
    }
    return inReadingOrder(level(chosen(candidates), layouts));
  }

  /**
   * Places the boards twice: the plainest one tells the level that the others float at too, so that
   * a neighbour's edge is not taken for a board's own.
   */
  private List<SlotProposal> level(List<Candidate> candidates, List<Layout> layouts) {
    OptionalDouble heightMm =
        candidates.stream()
            .map(c -> placed(c, prior))
            .flatMap(Optional::stream)
            .max(Comparator.comparingDouble(SlotProposal::edgeShare))
            .map(s -> OptionalDouble.of(s.pose().heightMm()))
            .orElse(OptionalDouble.empty());
    FitPose.Prior level =
        new FitPose.Prior(
            prior.lens(), heightMm.orElse(prior.heightMm()), LEVEL_ERROR, prior.tiltErrorDeg());
    List<SlotProposal> slots = new ArrayList<>();
    for (Candidate candidate : candidates) {
      placed(candidate, level).map(s -> byHoles(s, layouts)).ifPresent(slots::add);
    }
    return slots;
  }

  /** Of layouts with the same board the one whose hole grid shows best is taken. */
  private SlotProposal byHoles(SlotProposal slot, List<Layout> layouts) {
    SlotProposal best = slot;
    for (Layout layout : layouts) {
      if (layout.board().equals(slot.layout().board())
          && !layout.grid().equals(slot.layout().grid())) {
        SlotProposal other = proposal(layout, slot.pose(), slot.edgeShare());
        best = scatterMm(other) < scatterMm(best) ? other : best;
      }
    }
    return best;
  }

  private static double scatterMm(SlotProposal slot) {
    return slot.holes().map(HoleGrid::scatterMm).orElse(Double.POSITIVE_INFINITY);
  }

  private List<Candidate> turned(double turnDeg, List<Layout> layouts) {
    double[] turn = Rotations.about(0, 0, Math.toRadians(turnDeg));
    CameraPose above = CameraPose.of(prior.lens(), turn, new double[] {0, 0, prior.heightMm()});
    DeckSketch sketch = DeckSketch.of(photo, above);
    List<Candidate> found = new ArrayList<>();
    for (Layout layout : layouts) {
      for (double scale : SCALES) {
        for (boolean lying : new boolean[] {false, true}) {
          found.addAll(new Scan(sketch, above, layout, scale, lying).candidates());
        }
      }
    }
    return found;
  }

  /** Tries every place of a board of one size. */
  private record Scan(
      DeckSketch sketch, CameraPose above, Layout layout, double scale, boolean lying) {

    List<Candidate> candidates() {
      Board board = layout.board();
      double wide = scale * (lying ? board.lengthMm() : board.widthMm());
      double high = scale * (lying ? board.widthMm() : board.lengthMm());
      int w = (int) Math.round(wide / DeckSketch.CELL_MM);
      int h = (int) Math.round(high / DeckSketch.CELL_MM);
      List<Candidate> found = new ArrayList<>();
      for (int y = 0; y + h < sketch.rows(); y++) {
        for (int x = 0; x + w < sketch.columns(); x++) {
          double score = score(x, y, w, h);
          if (score > LEAST_MEAN) {
            PointMm at = sketch.place(x, y);
            double[] outline = {at.xMm(), at.yMm(), at.xMm() + wide, at.yMm() + high};
            found.add(new Candidate(layout, pose(at), score, outline));
          }
        }
      }
      return found;
    }

    private double score(int x, int y, int w, int h) {
      double left = sketch.downShare(x, y, y + h);
      double right = sketch.downShare(x + w, y, y + h);
      if (left + right < 2 * LEAST_SIDE) {
        return 0;
      }
      double top = sketch.alongShare(y, x, x + w);
      double bottom = sketch.alongShare(y + h, x, x + w);
      double least = Math.min(Math.min(left, right), Math.min(top, bottom));
      return least < LEAST_SIDE ? 0 : (left + right + top + bottom) / 4;
    }

    /** Returns the pose over a board whose upper left corner in the sketch lies at a place. */
    private CameraPose pose(PointMm at) {
      double[] r = above.rotation();
      double h = above.heightMm() / scale;
      double x = at.xMm() / scale;
      double y = at.yMm() / scale;
      if (lying) {
        // The board's x axis points up in the sketch and its y axis to the right.
        y += layout.board().widthMm();
        r = Rotations.times(r, Rotations.about(0, 0, -Math.PI / 2));
      }
      double[] a = above.rotation();
      double[] t = {a[0] * x + a[1] * y, a[3] * x + a[4] * y, h};
      return CameraPose.of(above.lens(), r, t);
    }
  }

  /** Takes the best candidates that do not overlap. */
  private static List<Candidate> chosen(List<Candidate> candidates) {
    List<Candidate> sorted = new ArrayList<>(candidates);
    sorted.sort(Comparator.comparingDouble(Candidate::score).reversed());
    List<Candidate> chosen = new ArrayList<>();
    for (Candidate c : sorted) {
      if (chosen.size() < MOST && chosen.stream().noneMatch(o -> overlap(o, c) > OVERLAP)) {
        chosen.add(c);
      }
    }
    return chosen;
  }

  /** Returns the common area over the smaller one. */
  private static double overlap(Candidate a, Candidate b) {
    double[] p = a.outlineMm();
    double[] q = b.outlineMm();
    double w = Math.max(0, Math.min(p[2], q[2]) - Math.max(p[0], q[0]));
    double h = Math.max(0, Math.min(p[3], q[3]) - Math.max(p[1], q[1]));
    double smaller = Math.min((p[2] - p[0]) * (p[3] - p[1]), (q[2] - q[0]) * (q[3] - q[1]));
    return w * h / smaller;
  }

  private Optional<SlotProposal> placed(Candidate candidate, FitPose.Prior height) {
    Layout layout = candidate.layout();
    return new BoardEdges(light, height)
        .place(start(candidate, height), layout.board(), REACH_MM, List.of())
        .filter(p -> p.share() > PLACED_MEAN)
        .map(p -> proposal(layout, p.fit().pose(), p.share()));
  }

  /** Returns the candidate's pose, moved along the ray to the board's middle to a height. */
  private static CameraPose start(Candidate candidate, FitPose.Prior height) {
    CameraPose pose = candidate.pose();
    double by = height.heightMm() / pose.heightMm();
    PointMm middle = BoardPlaces.centre(candidate.layout().board());
    double[] r = pose.rotation();
    double[] t = pose.translationMm();
    for (int i = 0; i < 3; i++) {
      double m = r[3 * i] * middle.xMm() + r[3 * i + 1] * middle.yMm();
      t[i] = by * (m + t[i]) - m;
    }
    return CameraPose.of(pose.lens(), r, t);
  }

  private SlotProposal proposal(Layout layout, CameraPose pose, double share) {
    HalfTurn turn = HalfTurn.of(light, pose, layout);
    List<PointPx> corners =
        BoardPlaces.corners(layout.board()).stream().map(turn.pose()::toPhoto).toList();
    return new SlotProposal(
        layout,
        turn.pose(),
        corners,
        share,
        turn.known(),
        HoleGrid.fit(photo, turn.pose(), layout));
  }

  /** Sorts by rows of boards, then along each. */
  private static List<SlotProposal> inReadingOrder(List<SlotProposal> slots) {
    List<SlotProposal> sorted = new ArrayList<>(slots);
    double high =
        sorted.stream()
            .mapToDouble(s -> middle(s).distancePx(s.cornersPx().get(0)))
            .average()
            .orElse(1);
    sorted.sort(
        Comparator.comparingLong((SlotProposal s) -> Math.round(middle(s).yPx() / high))
            .thenComparingDouble(s -> middle(s).xPx()));
    return sorted;
  }

  private static PointPx middle(SlotProposal s) {
    return new PointPx(
        s.cornersPx().stream().mapToDouble(PointPx::xPx).average().orElse(0),
        s.cornersPx().stream().mapToDouble(PointPx::yPx).average().orElse(0));
  }
}
