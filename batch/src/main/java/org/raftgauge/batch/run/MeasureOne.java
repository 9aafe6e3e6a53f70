// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Measures one photo of a run, or finds it in the history, and makes its pictures. */
final class MeasureOne {
  private final Tools tools;
  private final History history;
  private final RunDraft draft;
  private final PictureNames names;
  private final String code;

  MeasureOne(Tools tools, History history, RunDraft draft, PictureNames names) {
    this.tools = tools;
    this.history = history;
    this.draft = draft;
    this.names = names;
    this.code = ProgramVersion.current().measuringCode();
  }

  /**
   * Reads a photo, and what the second camera took with it; never throws for what the photo is.
   *
   * @param photo the photo
   * @return measures what was read
   */
  // Throwable: a photo that runs the memory out or meets a bug must not stop the others.
  Supplier<Measured> read(FoundPhoto photo) {
    String name = photo.facts().photo();
    try {
      byte[] bytes =
          ReadPhoto.bytes(photo.file(), name, why -> tools.progress().readAgain(name, why));
      Optional<byte[]> second = SecondFile.bytes(photo);
      return () -> measure(photo, bytes, second);
    } catch (InputException unreadable) {
      Problem problem = unreadable.problems().get(0);
      return () -> Measured.failed(name, "", problem.found(), problem.remedy());
    } catch (Throwable e) {
      return () -> crashed(name, "", e);
    }
  }

  private Measured measure(FoundPhoto photo, byte[] bytes, Optional<byte[]> second) {
    String sha256 = Digest.of(bytes);
    try {
      String settings = settings(code, tools.measurer(), photo.facts(), second);
      Optional<Kept> kept =
          history.find(sha256).filter(k -> k.origin().settings().equals(settings));
      return kept.isPresent()
          ? known(photo, bytes, kept.get())
          : fresh(measured(photo, bytes, second), sha256, settings);
    } catch (Throwable e) {
      return crashed(photo.facts().photo(), sha256, e);
    }
  }

  private Measured crashed(String name, String sha256, Throwable failure) {
    tools.progress().failed(name, failure);
    return Measured.crashed(name, sha256, failure);
  }

  /** Hashes what besides its bytes the measure of a photo depends on. */
  static String settings(
      String code, Measurer measurer, PhotoFacts facts, Optional<byte[]> second) {
    return Digest.of(
        code,
        measurer.settingsHash(facts),
        facts.photo(),
        facts.takenAt().orElse(""),
        facts.station().orElse(""),
        facts.slot().orElse(""),
        facts.raft().orElse(""),
        second.map(Digest::of).orElse(""));
  }

  private PhotoResult measured(FoundPhoto photo, byte[] bytes, Optional<byte[]> second) {
    return tools.measurer().measure(bytes, second, photo.facts());
  }

  private Measured fresh(PhotoResult result, String sha256, String settings) {
    if (!result.measure().sha256().equals(sha256)) {
      throw new IllegalStateException("measure is of other bytes: " + result.measure().sha256());
    }
    String note = draw(result);
    return measured(result.measure(), settings, Measured.Source.FRESH, note);
  }

  private Measured known(FoundPhoto photo, byte[] bytes, Kept kept) throws IOException {
    boolean copied = !tools.pictures().wanted() || copied(kept);
    String note = copied ? "" : draw(measured(photo, bytes, SecondFile.bytes(photo)));
    return measured(kept.measure(), kept.origin().settings(), Measured.Source.HISTORY, note);
  }

  private Measured measured(
      PhotoMeasure measure, String settings, Measured.Source source, String note) {
    boolean pictured = tools.pictures().wanted() && note.isEmpty();
    return new Measured(measure, settings, source, pictured, note);
  }

  /**
   * Makes a photo's pictures anew, as the second pass settled it.
   *
   * @param photo the photo, measured before
   * @param settled the settled measure
   */
  void redraw(FoundPhoto photo, SettleHalfTurns.Outcome settled) {
    if (!tools.pictures().wanted()) {
      return;
    }
    try {
      byte[] bytes = ReadPhoto.bytes(photo.file(), photo.facts().photo());
      PhotoResult result = measured(photo, bytes, SecondFile.bytes(photo));
      if (result.measure().sha256().equals(settled.photo().sha256())) {
        draw(result.settled(settled.photo(), settled.turned()));
      }
    } catch (InputException | RuntimeException e) {
      tools.progress().failed(photo.facts().photo(), e);
    }
  }

  private boolean copied(Kept kept) throws IOException {
    String photo = kept.measure().photo();
    if (kept.picturedRun().isEmpty() || !names.plain(photo)) {
      return false;
    }
    Optional<Path> folder = history.folderOf(kept.picturedRun().get());
    if (folder.isEmpty() || !RunJson.isOf(folder.get(), kept.picturedRun().get())) {
      return false;
    }
    Path earlier = folder.get();
    return draft.write(to -> tools.pictures().copy(earlier, names.of(photo), to));
  }

  /** Draws; a picture that fails costs no numbers. Returns what went wrong, or an empty text. */
  private String draw(PhotoResult result) {
    if (!tools.pictures().wanted()) {
      return "";
    }
    String photo = result.measure().photo();
    try {
      draft.write(
          to -> {
            tools.pictures().draw(result, names.of(photo), to);
            return true;
          });
      return "";
    } catch (IOException | RuntimeException | LinkageError e) {
      tools.progress().failed(photo, e);
      return photo + ": its picture could not be made: " + e;
    }
  }
}
