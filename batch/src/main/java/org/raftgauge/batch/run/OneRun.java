// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.batch.store.RunRecord;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.batch.store.Step;

/** One run with its history open: measures, settles, judges, fills the draft, publishes. */
final class OneRun {
  private final RunRequest request;
  private final FoundPhotos found;
  private final Tools tools;
  private final History history;

  OneRun(RunRequest request, FoundPhotos found, Tools tools, History history) {
    this.request = request;
    this.found = found;
    this.tools = tools;
    this.history = history;
  }

  /** Runs, and publishes the draft at the end. */
  RunSummary into(RunDraft draft) throws IOException {
    List<String> notes = clockNotes();
    List<FoundPhoto> photos = found.inOrder(tools.farm().book());
    PictureNames names = new PictureNames(photos.stream().map(p -> p.facts().photo()).toList());
    MeasureOne one = new MeasureOne(tools, history, draft, names);
    FirstPass pass = measure(photos, one);
    Measures measures = history.measures();
    StationDoubts doubts = StationDoubts.of(measures, tools.farm());
    SettlePhotos second = SettlePhotos.of(measures, pass.photos(), doubts, tools.farm());
    redraw(second, pass.photos(), one);
    Collected collected =
        CollectRows.collect(
            FinalPhotos.of(pass.photos(), second.photos()), second.photos(), tools.farm());
    Path folder = RunPlace.of(request, Summarise.evenings(collected.photos(), tools.farm()));
    notes.addAll(notes(pass.photos()));
    RunSummary measured =
        Summarise.run(folder, collected, tools.farm(), notes)
            .until(tools.farm().evening(request.startedAt().plusDays(1)))
            .corrected(measures.corrections().all());
    RunSummary summary = judged(measured, measures);
    FillDraft fill = new FillDraft(draft, tools.farm().book());
    fill.tables(collected);
    fill.evening(summary);
    RunOutcome outcome =
        new RunOutcome(
            collected.photos(), collected.rafts(), pictures(photos, names), summary, stamp());
    draft.write(to -> page(outcome, to));
    Map<String, Object> facts = RunFacts.of(request, tools, summary, pass);
    facts.put("stations", RunFacts.stations(doubts.on(summary.missing().keySet())));
    fill.json(facts);
    Optional<String> left =
        publish(draft, folder, second.photos(), record(pass.photos(), measures));
    return backedUp(left.map(summary::noted).orElse(summary));
  }

  private Optional<String> publish(
      RunDraft draft, Path folder, List<Settled> settled, RunRecord record) throws IOException {
    draft.sync(tools.steps());
    history.settle(settled, record, folder);
    Optional<String> left = draft.publish(folder, tools.steps());
    history.published(request.id());
    return left;
  }

  /** Backs the history up; a run that stands is no failure where that cannot be done. */
  private RunSummary backedUp(RunSummary summary) throws IOException {
    try {
      history.backUp(request.startedAt().toLocalDate());
      tools.steps().before(Step.ENDED);
      return summary;
    } catch (IOException e) {
      return summary.noted("the history could not be backed up: " + e.getMessage());
    }
  }

  /** Judges the latest evening of the photos, from all that is known up to it. */
  private RunSummary judged(RunSummary summary, Measures measures) throws IOException {
    Optional<LocalDate> evening = summary.evening();
    if (evening.isEmpty()) {
      return summary;
    }
    JudgeHistory.Judgement judged =
        JudgeHistory.of(
            measures,
            tools.farm(),
            new JudgeHistory.Asked(evening.get(), Instant.MAX),
            tools.forecasts());
    return summary.with(judged.result(), judged.outlook());
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

  private FirstPass measure(List<FoundPhoto> photos, MeasureOne one) throws IOException {
    RunClock clock = new RunClock();
    KeepMeasures keep = new KeepMeasures(history, request.id());
    tools.progress().started(photos.size());
    try {
      MeasureAll.measure(
          photos,
          request.workers(),
          one::read,
          outcome -> {
            keep.take(outcome);
            if (outcome.source() == Measured.Source.FAILED) {
              checkFolder(keep);
            }
            told(outcome);
          });
      keep.flush();
    } finally {
      tools.progress().finished();
    }
    clock.measured();
    return new FirstPass(keep.all(), clock);
  }

  /** Stops where the whole photo folder has gone, rather than refuse every photo. */
  private void checkFolder(KeepMeasures keep) throws IOException {
    if (!Files.isDirectory(request.photos())) {
      keep.flush();
      throw new IOException(
          "the photo folder "
              + request.photos()
              + " is not there any more; put the card or drive back and run again: what was"
              + " measured so far is kept");
    }
  }

  private void told(Measured outcome) {
    String photo = outcome.measure().photo();
    if (outcome.source() == Measured.Source.HISTORY) {
      tools.progress().known(photo);
    } else {
      tools.progress().done(photo);
    }
  }

  /** Makes the pictures anew of photos whose rafts the second pass turned, held or renamed. */
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

  /** Records the run; pictures drawn as corrected are not copied later, for that may be undone. */
  private RunRecord record(List<Measured> measured, Measures measures) {
    return new RunRecord(
        request.id(),
        request.startedAt(),
        ProgramVersion.current().version(),
        measured.size(),
        measured.stream()
            .filter(Measured::pictured)
            .map(m -> m.measure().sha256())
            .filter(sha256 -> measures.corrections().of(Set.of(sha256)).isEmpty())
            .toList());
  }

  private List<String> clockNotes() throws IOException {
    List<String> notes = new ArrayList<>();
    Optional<Instant> latest = history.latestRun();
    if (latest.filter(request.startedAt().toInstant()::isBefore).isPresent()) {
      notes.add(
          "this computer's clock says "
              + request.startedAt().withNano(0)
              + ", which is before the last run ("
              + latest.get().atOffset(request.startedAt().getOffset()).withNano(0)
              + "); set the clock");
    }
    return notes;
  }

  private List<String> notes(List<Measured> measured) {
    List<String> notes = new ArrayList<>();
    found.problems().forEach(p -> notes.add(p.toString()));
    measured.stream().map(Measured::note).filter(n -> !n.isEmpty()).forEach(notes::add);
    notes.addAll(
        HeightNotes.of(measured.stream().map(Measured::measure).toList(), tools.farm().book()));
    return notes;
  }
}
