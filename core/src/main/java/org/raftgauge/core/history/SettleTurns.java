// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Settles, look by look in the order of time, which way round a raft lay whose picture does not
 * tell: by its pattern of areas in the look before ({@link HalfTurn}).
 *
 * <p>A board in the slot in which it lay before is taken to lie as before unless the pattern speaks
 * plainly against it: nobody turns a floating board under a camera, but once in ten thousand looks
 * (our own guess). A board found by its outline, or seen in another place than before, may lie
 * either way, and the pattern alone decides. What stays open is held.
 */
public final class SettleTurns {
  /** What a person can do about a raft that is held for its turn. */
  public static final String REMEDY =
      "lay it with A1 at its usual end and photograph it again; a mark on the board"
          + " (orientation_mark in layouts.yaml) settles it for good";

  /** Held: nothing in the picture tells, and there is nothing to compare with. */
  public static final String NO_EVENING_BEFORE =
      "no marker, tag or mark tells which end of the board is which, and no earlier photo of these"
          + " plants does";

  /** Held: both ways round fit the look before. */
  public static final String EITHER_WAY =
      "the board may lie either way round: its plants fit the photo before both ways";

  /** Held: it lies turned, but was measured with what is known of the opposite sites. */
  public static final String SEVERAL_CROPS =
      "the board lies turned by half a turn, and its crops or ruler heights were looked for at the"
          + " wrong ends";

  /** log10 of the odds that a board left in its slot lies as before. */
  private static final double LOG10_LEFT_ALONE = 4;

  private SettleTurns() {}

  /**
   * One photo's measure of a raft.
   *
   * @param raft the measure as the first pass made it
   * @param station where it was taken
   * @param plants the plant at each planted site then, by site
   * @param crops how many crops stand on it
   */
  public record Look(RaftMeasure raft, String station, Map<SiteId, String> plants, int crops) {

    /** Copies the plants. */
    public Look {
      plants = Map.copyOf(plants);
    }
  }

  /**
   * What was settled of a look.
   *
   * @param turned whether its sites are to be named from the other end ({@link RaftMeasure#turned})
   * @param held why it cannot be told; empty where it can
   */
  public record Turn(boolean turned, String held) {
    private static final Turn STRAIGHT = new Turn(false, "");
  }

  /**
   * Settles the looks of one raft.
   *
   * @param looks in the order of time
   * @return a turn for each look, in the same order; looks that are held already, or whose picture
   *     tells, stay as they are
   */
  public static List<Turn> settle(List<Look> looks) {
    List<Turn> turns = new ArrayList<>();
    Optional<Look> before = Optional.empty();
    for (Look look : looks) {
      Turn turn = turn(look, before);
      turns.add(turn);
      if (turn.held().isEmpty() && look.raft().held().isEmpty()) {
        before = Optional.of(turn.turned() ? turned(look) : look);
      }
    }
    return turns;
  }

  private static Look turned(Look look) {
    return new Look(look.raft().turned(), look.station(), look.plants(), look.crops());
  }

  private static Turn turn(Look look, Optional<Look> before) {
    if (!look.raft().held().isEmpty() || look.raft().halfTurnKnown()) {
      return Turn.STRAIGHT;
    }
    Optional<HalfTurn> seen = before.map(b -> compare(look, b)).filter(HalfTurn::compared);
    if (seen.isEmpty()) {
      return look.raft().poseSource() == PoseSource.SLOT
          ? Turn.STRAIGHT
          : new Turn(false, NO_EVENING_BEFORE);
    }
    boolean leftAlone = samePlace(look, before.get());
    double log10Odds = seen.get().log10Odds() + (leftAlone ? LOG10_LEFT_ALONE : 0);
    return switch (HalfTurn.answer(log10Odds)) {
      case STRAIGHT -> Turn.STRAIGHT;
      case TURNED -> boundToSites(look) ? new Turn(false, SEVERAL_CROPS) : new Turn(true, "");
      case AMBIGUOUS -> new Turn(false, EITHER_WAY);
    };
  }

  /** Says whether a look was measured with what holds of single sites: crops, heights by ruler. */
  private static boolean boundToSites(Look look) {
    return look.crops() > 1 || !look.raft().rulerSites().isEmpty();
  }

  private static boolean samePlace(Look look, Look before) {
    return look.raft().poseSource() == PoseSource.SLOT
        && before.raft().poseSource() == PoseSource.SLOT
        && look.station().equals(before.station())
        && look.raft().slot().equals(before.raft().slot());
  }

  /** Compares the sites at which the same plants stand, or none. */
  private static HalfTurn compare(Look look, Look before) {
    Map<SiteId, Double> areas = areas(before.raft());
    areas
        .keySet()
        .removeIf(site -> !Objects.equals(look.plants().get(site), before.plants().get(site)));
    return HalfTurn.settle(grid(look.raft()), areas(look.raft()), areas);
  }

  /** Returns a grid with a raft's rows and columns; where its holes lie is of no matter here. */
  private static SiteGrid grid(RaftMeasure raft) {
    int rows = 1;
    int columns = 1;
    for (SiteMeasure site : raft.sites()) {
      rows = Math.max(rows, site.site().row() + 1);
      columns = Math.max(columns, site.site().column() + 1);
    }
    return new SiteGrid(rows, columns, 0, 0, 1, 1, 0);
  }

  private static Map<SiteId, Double> areas(RaftMeasure raft) {
    Map<SiteId, Double> areas = new HashMap<>();
    for (SiteMeasure site : raft.sites()) {
      OptionalDouble area = site.projectedAreaCm2();
      if (site.held().isEmpty() && area.isPresent()) {
        areas.put(site.site(), area.getAsDouble());
      }
    }
    return areas;
  }
}
