// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.plane.FindBoards;
import org.raftgauge.core.plane.FoundBoards;
import org.raftgauge.core.plane.KnownLayouts;

/** Finds the boards of a photo among the layouts that the book knows. */
final class BoardsOfPhoto {
  private final CropBook book;
  private final PhotoFacts facts;
  private final PhotoName name;

  BoardsOfPhoto(CropBook book, PhotoFacts facts, PhotoName name) {
    this.book = book;
    this.facts = facts;
    this.name = name;
  }

  /** Finds a photo's boards. */
  FoundBoards find(DecodedPhoto photo, PhotoStory.Scene scene) {
    return scene.station().kind() == Station.Kind.PASSING
        ? FindBoards.passing(photo.image(), photo.fine(), scene.station(), layouts(scene))
        : FindBoards.inSlots(photo.image(), photo.fine(), scene.station(), layoutsOn(scene));
  }

  /** Returns the layouts, of any date, that boards at a station may have. */
  List<Layout> layoutsAt(Station station) {
    Set<String> inSlots =
        station.slots().stream().map(Slot::layout).collect(Collectors.toUnmodifiableSet());
    return book.layouts().entrySet().stream()
        .filter(e -> station.kind() == Station.Kind.PASSING || inSlots.contains(e.getKey()))
        .flatMap(e -> e.getValue().stream())
        .toList();
  }

  private KnownLayouts layouts(PhotoStory.Scene scene) {
    List<Layout> passing =
        layoutsOn(scene).values().stream()
            .filter(l -> l.markers().isPresent() || l.tag().isPresent())
            .toList();
    Optional<Layout> told = facts.raft().or(name::raft).flatMap(raft -> layoutOf(raft, scene));
    return new KnownLayouts(raft -> layoutOf(raft, scene), passing, told);
  }

  private Optional<Layout> layoutOf(String raft, PhotoStory.Scene scene) {
    return book.plantingsOn(raft, scene.evening()).stream()
        .map(Planting::layout)
        .findFirst()
        .flatMap(l -> book.layout(l, scene.evening()));
  }

  private Map<String, Layout> layoutsOn(PhotoStory.Scene scene) {
    Map<String, Layout> layouts = new TreeMap<>();
    for (String layout : book.layouts().keySet()) {
      book.layout(layout, scene.evening()).ifPresent(l -> layouts.put(layout, l));
    }
    return layouts;
  }
}
