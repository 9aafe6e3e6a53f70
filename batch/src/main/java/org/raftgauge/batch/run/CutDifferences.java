// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.RaftDays;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Agreement;
import org.raftgauge.core.track.Judged;

/**
 * Cuts the sites on which grower and program differ out of the pictures of boards that earlier runs
 * kept, so that both can be held against the plant.
 */
final class CutDifferences {
  private static final String NONE = "no run kept a picture of the board";

  private final History history;
  private final Farm farm;
  private final AgreeWithCalls.Cutting cutting;

  CutDifferences(History history, Farm farm, AgreeWithCalls.Cutting cutting) {
    this.history = history;
    this.farm = farm;
    this.cutting = cutting;
  }

  /**
   * Cuts into {@code crops/} below a folder.
   *
   * @return where the picture of each case on a site that differs lies, or why there is none
   */
  Map<Agreement.Case, String> into(Path folder, Agreement agreement) throws IOException {
    Map<Agreement.Case, String> said = new HashMap<>();
    for (Agreement.Case each : agreement.cases()) {
      boolean told = each.judged().isPresent() && each.call().site().isPresent();
      if (told && !each.agrees()) {
        said.put(each, cut(folder, each));
      }
    }
    return said;
  }

  private String cut(Path folder, Agreement.Case each) throws IOException {
    String raft = each.call().raft();
    SiteId site = each.call().site().orElseThrow();
    Judged.Place place = each.judged().orElseThrow().place();
    Optional<Board> board = board(raft, place.takenAt().orElseThrow());
    if (board.isEmpty()) {
      return NONE;
    }
    String name =
        "crops/%s_%s_%s.jpg"
            .formatted(each.call().calledOn(), raft.replaceAll("[^\\p{L}\\p{N}_-]", "_"), site);
    Files.createDirectories(folder.resolve("crops"));
    cutting.cut(board.get().picture(), board.get().layout(), site, folder.resolve(name));
    return name;
  }

  /** A picture of a board and the board's layout. */
  private record Board(Path picture, Layout layout) {}

  private Optional<Board> board(String raft, OffsetDateTime takenAt) throws IOException {
    RaftDays days =
        new RaftDays(raft, takenAt.toLocalDate().minusDays(1), takenAt.toLocalDate().plusDays(1));
    for (Kept kept : history.measures().takenBetween(days)) {
      boolean same = kept.measure().takenAt().filter(takenAt::isEqual).isPresent();
      Optional<Path> run =
          same && kept.picturedRun().isPresent()
              ? history.folderOf(kept.picturedRun().get())
              : Optional.empty();
      for (int at = 0; run.isPresent() && at < kept.measure().rafts().size(); at++) {
        var shown = kept.measure().rafts().get(at);
        Optional<Layout> layout =
            farm.book()
                .layout(shown.layout(), farm.evening(takenAt))
                .filter(l -> shown.raft().filter(raft::equals).isPresent());
        Optional<Path> picture = picture(run.get(), kept.measure().photo(), at);
        if (layout.isPresent() && picture.isPresent()) {
          return Optional.of(new Board(picture.get(), layout.get()));
        }
      }
    }
    return Optional.empty();
  }

  /** Finds the picture under the names that {@link PictureNames} gives alone or among twins. */
  private static Optional<Path> picture(Path run, String photo, int place) {
    return List.of(
            new PictureNames(List.of(photo)).of(photo),
            new PictureNames(List.of(photo, photo)).of(photo))
        .stream()
        .map(name -> run.resolve("boards/" + name + "." + place + ".jpg"))
        .filter(Files::isRegularFile)
        .findFirst();
  }
}
