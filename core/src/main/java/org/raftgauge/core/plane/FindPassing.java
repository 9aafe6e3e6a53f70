// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.marker.CoarsePhoto;
import org.raftgauge.core.marker.FindMarkers;
import org.raftgauge.core.marker.FindTags;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.marker.MarkerSighting;
import org.raftgauge.core.marker.PictureRegion;
import org.raftgauge.core.marker.TagSighting;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Finds passing rafts: by marks, else as {@link FindUnmarked} does. */
final class FindPassing {
  /** A pose from marks alone that is worse than this wants the board's edges as well, mm. */
  private static final double COARSE_MM = 2;

  /** A pose worse than this is no ground for areas (about 1 % of a small plant's), mm. */
  private static final double HELD_MM = 6;

  /**
   * Two layouts that explain the same marks to within this of each other explain them alike, px.
   */
  private static final double ALIKE_PX = 0.3;

  static final String MIRRORED =
      "the photo is mirrored: its markers or its tag read only as in a mirror";

  private static final String MIRRORED_REMEDY =
      "switch mirroring off in the camera or the program that copied it, and photograph it again;"
          + " if only the tag reads so, print the tag anew";

  private final LookAgain again;
  private final RgbImage photo;
  private final FitPose.Prior prior;
  private final KnownLayouts layouts;
  private final List<String> leftovers = new ArrayList<>();
  private final List<String> unusable = new ArrayList<>();

  FindPassing(LookAgain again, RgbImage photo, FitPose.Prior prior, KnownLayouts layouts) {
    this.again = again;
    this.photo = photo;
    this.prior = prior;
    this.layouts = layouts;
  }

  FoundBoards find() {
    GroupMarks grouping = new GroupMarks(layouts, prior);
    List<MarkerSighting> markers;
    List<TagSighting> tags;
    if (CoarsePhoto.serves(photo)) {
      CoarsePhoto coarse = CoarsePhoto.of(photo);
      markers = coarse.markers();
      tags = coarse.tags();
      // Each board has one tag; one that is too small there may show in the photo itself.
      tags = tags.size() < boardsOf(markers) ? FindTags.in(photo) : tags;
    } else {
      markers = FindMarkers.in(photo);
      tags = FindTags.in(photo);
    }
    List<Mark> marks = marks(markers, tags);
    if (marks.isEmpty()) {
      PictureRegion all = whole();
      double longSide = Math.max(photo.width(), photo.height());
      double factor = longSide > 2000 ? 2000 / longSide : 1;
      int enlarge = longSide < 2000 ? 2 : 1;
      tags = FindTags.in(photo, all, enlarge);
      marks = marks(FindMarkers.in(photo, all, factor), tags);
    }
    if (mirrored(marks, tags)) {
      return FoundBoards.refused(MIRRORED, MIRRORED_REMEDY);
    }
    List<FoundBoard> boards = new ArrayList<>();
    List<GroupMarks.Grouped> groups = grouping.group(marks);
    for (GroupMarks.Grouped grouped : groups) {
      boards.add(board(grouped, groups.size()));
    }
    if (MissingBoard.mayCover(boards, middle())) {
      marks.addAll(besideLeaf(markers));
      for (GroupMarks.Grouped grouped : grouping.group(marks)) {
        boards.add(board(grouped, boards.size() + 1));
      }
    }
    marks.forEach(m -> leftovers.add(m.named() + " fits no board"));
    if (MissingBoard.mayCover(boards, middle())) {
      new FindUnmarked(photo, prior, layouts).beside(boards).ifPresent(boards::add);
    }
    return FoundBoards.found(boards, leftovers);
  }

  /** Returns markers that leaves touch, and that were not seen before. */
  private List<Mark> besideLeaf(List<MarkerSighting> known) {
    List<MarkerSighting> more =
        FindMarkers.besideLeaf(photo).stream()
            .filter(m -> known.stream().noneMatch(k -> sameSquare(k, m)))
            .toList();
    return marks(more, List.of());
  }

  private static boolean sameSquare(MarkerSighting a, MarkerSighting b) {
    double side = a.cornersPx().get(0).distancePx(a.cornersPx().get(1));
    return a.centrePx().distancePx(b.centrePx()) < side / 2;
  }

  /** Returns how many boards there are at least: markers of one id, or one where none shows. */
  private static int boardsOf(List<MarkerSighting> markers) {
    int most = 1;
    for (int id = 0; id < 4; id++) {
      int wanted = id;
      most = Math.max(most, (int) markers.stream().filter(m -> m.id() == wanted).count());
    }
    return most;
  }

  /**
   * Says whether a photo is mirrored: no corner marker reads, and its tag reads only as in a
   * mirror, or there is no tag and the markers do. A mirrored photo without either looks like any
   * other.
   */
  private boolean mirrored(List<Mark> marks, List<TagSighting> tags) {
    if (marks.stream().anyMatch(m -> !m.isTag())) {
      return false;
    }
    return tags.isEmpty()
        ? FindMarkers.inTheMirrorOf(photo)
        : tags.stream().allMatch(TagSighting::mirrored);
  }

  private PictureRegion whole() {
    return new PictureRegion(0, 0, photo.width(), photo.height());
  }

  private List<Mark> marks(List<MarkerSighting> markers, List<TagSighting> tags) {
    List<Mark> marks = new ArrayList<>();
    for (MarkerSighting marker : markers) {
      if (marker.id() < 4) {
        marks.add(Mark.of(marker));
      } else {
        leftovers.add("marker " + marker.id() + ": corner markers have ids 0 to 3");
      }
    }
    for (TagSighting tag : tags) {
      if (!tag.usable()) {
        leftovers.add(Mark.of(tag).named() + ": " + tag.unusable());
        unusable.add(tag.unusable());
      }
      marks.add(Mark.of(tag));
    }
    return marks;
  }

  private FoundBoard board(GroupMarks.Grouped grouped, int boards) {
    MarkGroup group = asTold(again.forMissing(grouped.group()), boards);
    List<String> notes = new ArrayList<>(grouped.notes());
    if (unusable.size() == 1 && group.tag().filter(tag -> tag.text().isEmpty()).isPresent()) {
      notes.add(unusable.get(0));
    }
    Board board = group.layout().board();
    PoseFit fit = group.fit();
    if (fit.errorMm(board) > COARSE_MM) {
      Optional<BoardEdges.Placed> placed = onEdges(group);
      if (placed.isPresent()) {
        fit = placed.get().fit();
        notes.add("few marks: placed by " + placed.get().edgesSeen() + " edges of the board too");
      }
    }
    double errorMm = fit.errorMm(board);
    String held =
        errorMm > HELD_MM
            ? "too few marks, and the board's edges were not found; clean or replace the markers"
            : rivals(group);
    return new FoundBoard(
        group.tag().flatMap(Mark::text),
        Optional.empty(),
        group.layout(),
        fit.pose(),
        PoseSource.MARKERS,
        errorMm,
        true,
        notes,
        held);
  }

  /**
   * Takes the layout that the tag tells, which may have been read after the marks were grouped;
   * without one, that told for a photo's only board, or for the one in its middle among neighbours
   * that look in; either where it explains the marks as well.
   */
  private MarkGroup asTold(MarkGroup group, int boards) {
    return byTag(group)
        .or(() -> layouts.told().filter(told -> boards == 1 || inTheMiddle(group)))
        .filter(told -> !told.equals(group.layout()) && alike(group, told))
        .map(told -> MarkGroup.of(told, group.marks(), prior))
        .orElse(group);
  }

  private boolean inTheMiddle(MarkGroup group) {
    return MissingBoard.covers(group.fit().pose(), group.layout().board(), middle());
  }

  private String rivals(MarkGroup group) {
    return byTag(group).isPresent() ? "" : layouts.rivals(group.layout(), l -> alike(group, l));
  }

  /** Returns the layout that the tag tells. */
  private Optional<Layout> byTag(MarkGroup group) {
    return group.tag().flatMap(Mark::text).flatMap(layouts.ofRaft());
  }

  /** Says whether a board of another layout would show a group's marks at the same places. */
  private boolean alike(MarkGroup group, Layout other) {
    return group.marks().stream().allMatch(m -> m.places(other).isPresent())
        && MarkGroup.of(other, group.marks(), prior).rmsPx() < group.rmsPx() + ALIKE_PX;
  }

  private Optional<BoardEdges.Placed> onEdges(MarkGroup group) {
    double reachMm = Math.max(10, 3 * group.fit().errorMm(group.layout().board()));
    List<FitPose.Pull> pulls =
        group.marks().stream()
            .flatMap(m -> m.ties(group.layout()).stream())
            .map(FitPose::pull)
            .toList();
    return new BoardEdges(LinearLight.of(photo), prior)
        .place(group.fit().pose(), group.layout().board(), Math.min(reachMm, 80), pulls);
  }

  /** Returns the middle of the photo, where a raft is put to be taken. */
  private PointPx middle() {
    return new PointPx((photo.width() - 1) / 2.0, (photo.height() - 1) / 2.0);
  }
}
