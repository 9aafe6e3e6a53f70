// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.RunRecord;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.report.PhotosTable;
import org.raftgauge.core.report.RaftsTable;
import org.raftgauge.core.report.SitesTable;

/**
 * Runs over a folder of photos: measures, keeps the measures in the book's history, and publishes a
 * folder with tables and pictures.
 *
 * <p>The history is saved as photos are measured, so a run that was killed loses little and doubles
 * nothing when it is run again; the folder stands whole in its place or not at all.
 */
public final class RunFolder {
  private static final String HISTORY = "history.db";

  private final RunRequest request;
  private final FoundPhotos found;
  private final Tools tools;

  private RunFolder(RunRequest request, FoundPhotos found, Tools tools) {
    this.request = request;
    this.found = found;
    this.tools = tools;
  }

  /**
   * Runs.
   *
   * @param request what is asked for
   * @param found the photos
   * @param tools what to work with
   * @return what it came to
   * @throws InputException if the request cannot be met; nothing is written then
   * @throws IOException if the run fails; nothing is published then
   */
  public static RunSummary run(RunRequest request, FoundPhotos found, Tools tools)
      throws InputException, IOException {
    OutFolder.check(request);
    return new RunFolder(request, found, tools).locked();
  }

  @SuppressWarnings("try") // the lock is held, not used
  private RunSummary locked() throws IOException {
    try (BookLock lock =
            BookLock.take(request.book(), request.patience(), tools.progress()::waitingFor);
        History history = History.open(request.book().resolve(HISTORY));
        RunDraft draft = RunDraft.start(parent())) {
      Thread hook = new Thread(() -> closeQuietly(draft), "remove unfinished run");
      Runtime.getRuntime().addShutdownHook(hook);
      try {
        return run(history, draft);
      } finally {
        unhook(hook);
      }
    }
  }

  private RunSummary run(History history, RunDraft draft) throws IOException {
    List<FoundPhoto> photos =
        found.photos().stream().sorted(Comparator.comparing(p -> p.facts().photo())).toList();
    PictureNames names = new PictureNames(photos.stream().map(p -> p.facts().photo()).toList());
    MeasureOne one = new MeasureOne(tools, history, draft, names);
    FirstPass pass = measure(history, photos, one);
    StationDoubts doubts = StationDoubts.of(history, tools.farm());
    SettlePhotos second = SettlePhotos.of(history, pass.photos(), doubts, tools.farm());
    redraw(second, pass.photos(), one);
    List<Settled> settled = second.photos();
    Collected collected =
        CollectRows.collect(FinalPhotos.of(pass.photos(), settled), settled, tools.farm());
    Path folder = place(collected.photos());
    RunSummary measured =
        Summarise.run(folder, collected, tools.farm(), notes(pass.photos()))
            .until(tools.farm().evening(request.startedAt().plusDays(1)));
    draft.write(to -> write(to, collected));
    RunSummary summary = judged(measured, history);
    if (summary.judged().isPresent()) {
      draft.write(to -> EveningFiles.write(to, summary.judged().get(), tools.farm().book()));
    }
    if (summary.outlook().isPresent()) {
      draft.write(to -> OutlookFiles.write(to, summary.outlook().get()));
    }
    RunOutcome outcome =
        new RunOutcome(
            collected.photos(), collected.rafts(), pictures(photos, names), summary, stamp());
    draft.write(to -> page(outcome, to));
    Map<String, Object> facts = RunFacts.of(request, tools, summary, pass);
    facts.put("stations", RunFacts.stations(doubts.on(summary.missing().keySet())));
    String json = RunJson.text(facts, draft.files());
    draft.write(to -> Files.writeString(to.resolve(RunJson.FILE), json) != null);
    history.settle(settled, record(pass.photos()), folder);
    draft.publish(folder);
    history.published(request.id());
    return summary;
  }

  private static boolean write(Path folder, Collected collected) throws IOException {
    Files.writeString(folder.resolve("photos.csv"), PhotosTable.csv(collected.photos()));
    Files.writeString(folder.resolve("sites.csv"), SitesTable.csv(collected.rafts()));
    Files.writeString(folder.resolve("rafts.csv"), RaftsTable.csv(collected.rafts()));
    return true;
  }

  /** Judges the latest evening of the photos, from all that is known up to it. */
  private RunSummary judged(RunSummary summary, History history) throws IOException {
    Optional<LocalDate> evening = summary.evening();
    if (evening.isEmpty()) {
      return summary;
    }
    EveningResult judged =
        JudgeHistory.of(history, tools.farm(), evening.get(), tools.forecasts().graders());
    Optional<EveningOutlook> ahead = tools.forecasts().from(evening.get());
    return summary.with(JudgeHistory.withTasks(judged, ahead, tools.farm()), ahead);
  }

  private boolean page(RunOutcome outcome, Path folder) throws IOException {
    tools.page().write(outcome, folder);
    return true;
  }

  private RunOutcome.Stamp stamp() {
    ProgramVersion version = ProgramVersion.current();
    return new RunOutcome.Stamp(
        version.version(), version.measuringCode(), tools.farm().bookHash());
  }

  private static Map<String, String> pictures(List<FoundPhoto> photos, PictureNames names) {
    return photos.stream()
        .map(p -> p.facts().photo())
        .collect(Collectors.toMap(p -> p, names::of, (a, b) -> a));
  }

  private FirstPass measure(History history, List<FoundPhoto> photos, MeasureOne one)
      throws IOException {
    RunClock clock = new RunClock();
    KeepMeasures keep = new KeepMeasures(history, request.id());
    tools.progress().started(photos.size());
    try {
      MeasureAll.measure(
          photos,
          request.workers(),
          one,
          outcome -> {
            keep.take(outcome);
            told(outcome);
          });
      keep.flush();
    } finally {
      tools.progress().finished();
    }
    clock.measured();
    return new FirstPass(keep.all(), clock);
  }

  private void told(Measured outcome) {
    String photo = outcome.measure().photo();
    if (outcome.source() == Measured.Source.HISTORY) {
      tools.progress().known(photo);
    } else {
      tools.progress().done(photo);
    }
  }

  /** Makes the pictures anew of photos whose rafts the second pass turned or held. */
  private void redraw(SettlePhotos settled, List<Measured> measured, MeasureOne one) {
    Map<String, FoundPhoto> files = new HashMap<>();
    found.photos().forEach(p -> files.put(p.facts().photo(), p));
    for (Measured each : measured) {
      SettleHalfTurns.Outcome outcome = settled.changed().get(each.measure().sha256());
      if (outcome != null) {
        one.redraw(files.get(each.measure().photo()), outcome);
      }
    }
  }

  private Path parent() {
    return request
        .out()
        .map(out -> out.toAbsolutePath().normalize().getParent())
        .orElse(request.book().resolve("runs"));
  }

  /** Returns the place: as asked for, else a free name of the evenings in the book's runs. */
  private Path place(List<PhotoMeasure> photos) {
    if (request.out().isPresent()) {
      return request.out().get().toAbsolutePath().normalize();
    }
    NavigableSet<LocalDate> evenings = Summarise.evenings(photos, tools.farm());
    String name =
        evenings.isEmpty()
            ? request.startedAt().toLocalDateTime().withNano(0).toString().replace(":", "")
            : evenings.first() + (evenings.size() == 1 ? "" : "_to_" + evenings.last());
    Path place = parent().resolve(name);
    for (int n = 2; Files.exists(place); n++) {
      place = parent().resolve(name + "-" + n);
    }
    return place;
  }

  private RunRecord record(List<Measured> measured) {
    return new RunRecord(
        request.id(),
        request.startedAt(),
        ProgramVersion.current().version(),
        measured.size(),
        measured.stream().filter(Measured::pictured).map(m -> m.measure().sha256()).toList());
  }

  private List<String> notes(List<Measured> measured) {
    List<String> notes = new ArrayList<>();
    found.problems().forEach(p -> notes.add(p.toString()));
    measured.stream().map(Measured::note).filter(n -> !n.isEmpty()).forEach(notes::add);
    notes.addAll(
        HeightNotes.of(measured.stream().map(Measured::measure).toList(), tools.farm().book()));
    return notes;
  }

  private static void closeQuietly(RunDraft draft) {
    try {
      draft.close();
    } catch (IOException e) {
      // The process is ending; the next run clears the draft away.
    }
  }

  private static void unhook(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // The process is already ending and the hook at work.
    }
  }
}
