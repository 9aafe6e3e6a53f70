// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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

  private List<SlotProposal> find(List<Layout> layouts) {
    List<SlotCandidate> candidates = new ArrayList<>();
    double best = 0;
    for (double turnDeg = -MOST_TURN_DEG; turnDeg <= MOST_TURN_DEG; turnDeg++) {
      List<SlotCandidate> some = turned(turnDeg, layouts);
      double score = chosen(some).stream().mapToDouble(SlotCandidate::score).sum();
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
  private List<SlotProposal> level(List<SlotCandidate> candidates, List<Layout> layouts) {
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
    for (SlotCandidate candidate : candidates) {
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

  private List<SlotCandidate> turned(double turnDeg, List<Layout> layouts) {
    double[] turn = Rotations.about(0, 0, Math.toRadians(turnDeg));
    CameraPose above = CameraPose.of(prior.lens(), turn, new double[] {0, 0, prior.heightMm()});
    DeckSketch sketch = DeckSketch.of(photo, above);
    List<SlotCandidate> found = new ArrayList<>();
    for (Layout layout : layouts) {
      for (double scale : SCALES) {
        for (boolean lying : new boolean[] {false, true}) {
          found.addAll(new ScanDeck(sketch, above, layout, scale, lying).candidates());
        }
      }
    }
    return found;
  }

  /** Takes the best candidates that do not overlap. */
  private static List<SlotCandidate> chosen(List<SlotCandidate> candidates) {
    List<SlotCandidate> sorted = new ArrayList<>(candidates);
    sorted.sort(Comparator.comparingDouble(SlotCandidate::score).reversed());
    List<SlotCandidate> chosen = new ArrayList<>();
    for (SlotCandidate c : sorted) {
      if (chosen.size() < MOST && chosen.stream().noneMatch(o -> o.overlap(c) > OVERLAP)) {
        chosen.add(c);
      }
    }
    return chosen;
  }

  private Optional<SlotProposal> placed(SlotCandidate candidate, FitPose.Prior height) {
    Layout layout = candidate.layout();
    return new BoardEdges(light, height)
        .place(start(candidate, height), layout.board(), REACH_MM, List.of())
        .filter(p -> p.share() > PLACED_MEAN)
        .map(p -> proposal(layout, p.fit().pose(), p.share()));
  }

  /** Returns the candidate's pose, moved along the ray to the board's middle to a height. */
  private static CameraPose start(SlotCandidate candidate, FitPose.Prior height) {
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
