// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * Measures photos one by one as they arrive and keeps their measures in the book, so that the run
 * that publishes them later knows them already.
 */
public final class MeasureArrival {
  private static final String HISTORY = "history.db";

  private final Path book;
  private final Measurer measurer;
  private final String run;

  /**
   * Makes a measurer of arrivals.
   *
   * @param book the book's folder
   * @param measurer measures by the book
   * @param run names the watch in the history
   */
  public MeasureArrival(Path book, Measurer measurer, String run) {
    this.book = book;
    this.measurer = measurer;
    this.run = run;
  }

  /**
   * Measures a photo, or finds it in the history; never throws for what the photo is.
   *
   * @param photo the photo
   * @return what it says
   * @throws IOException if the history cannot be used
   */
  public PhotoMeasure measure(FoundPhoto photo) throws IOException {
    byte[] bytes;
    try {
      bytes = ReadPhoto.bytes(photo.file(), photo.facts().photo());
    } catch (InputException unreadable) {
      Problem problem = unreadable.problems().get(0);
      return failed(photo, "", problem.found(), problem.remedy());
    }
    String sha256 = Digest.of(bytes);
    Optional<byte[]> second = SecondFile.bytes(photo);
    String code = ProgramVersion.current().measuringCode();
    String settings = MeasureOne.settings(code, measurer, photo.facts(), second);
    try (History history = History.open(book.resolve(HISTORY))) {
      Optional<Kept> kept =
          history.find(sha256).filter(k -> k.origin().settings().equals(settings));
      if (kept.isPresent()) {
        return kept.get().measure();
      }
      PhotoMeasure measure = measurer.measure(bytes, second, photo.facts()).measure();
      history.save(List.of(Kept.fresh(measure, ProgramVersion.current().origin(settings, run))));
      return measure;
    } catch (RuntimeException | LinkageError e) {
      return failed(
          photo, sha256, "the program failed on this photo: " + e, "take the photo again");
    }
  }

  private static PhotoMeasure failed(
      FoundPhoto photo, String sha256, String reason, String remedy) {
    return Rows.photo(photo.facts().photo(), sha256, new Say(PhotoStatus.REFUSED, reason, remedy));
  }
}
