// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Judges an evening from a book's history alone and publishes the tables as a folder. */
public final class JudgeFolder {
  private static final String HISTORY = "history.db";

  private JudgeFolder() {}

  /**
   * What is asked for.
   *
   * @param book folder of the book
   * @param evening the evening to judge
   * @param out folder for the results
   * @param startedAt when it was asked for
   * @param corrected whose corrections are obeyed
   */
  public record Request(
      Path book, LocalDate evening, Path out, OffsetDateTime startedAt, Corrected corrected) {}

  /** Which corrections are obeyed. */
  public enum Corrected {
    /** Those that were entered by the end of the evening. */
    THAT_EVENING,
    /** All that were entered so far. */
    SINCE
  }

  /**
   * Judges.
   *
   * @param request what is asked for
   * @param farm the book
   * @param forecasts tells what is to come
   * @return what came of it
   * @throws InputException if the request cannot be met; nothing is written then
   * @throws IOException if it fails; nothing is published then
   */
  public static Published run(Request request, Farm farm, ForecastSource forecasts)
      throws InputException, IOException {
    OutFolder.check(request.out(), request.book());
    Path out = request.out().toAbsolutePath().normalize();
    try (History history = open(request.book());
        RunDraft draft = RunDraft.start(out.getParent())) {
      Instant by = correctedBy(request, farm);
      Measures measures = history.measures(by);
      JudgeHistory.Judgement judged =
          JudgeHistory.of(measures, farm, new JudgeHistory.Asked(request.evening(), by), forecasts);
      EveningResult result = judged.result();
      List<Correction> obeyed = measures.corrections().all();
      String line = CorrectionNotes.line(obeyed);
      draft.write(to -> EveningFiles.write(to, result, farm.book(), line));
      if (judged.outlook().isPresent()) {
        draft.write(to -> OutlookFiles.write(to, judged.outlook().get()));
      }
      String json = RunJson.text(facts(request, farm, obeyed), draft.files());
      draft.write(to -> Files.writeString(to.resolve(RunJson.FILE), json) != null);
      return new Published(result, draft.publish(out));
    }
  }

  /**
   * An evening whose results lie in their folder.
   *
   * @param evening what it came to
   * @param left what is left to say: where earlier results lie that cannot be removed
   */
  public record Published(EveningResult evening, Optional<String> left) {}

  private static Instant correctedBy(Request request, Farm farm) {
    return switch (request.corrected()) {
      case THAT_EVENING -> farm.farmDay().start(request.evening().plusDays(1));
      case SINCE -> Instant.MAX;
    };
  }

  /**
   * Opens the history of a book, which must be there.
   *
   * @param book the book's folder
   * @return the open history
   * @throws InputException if the book has none
   * @throws IOException if it cannot be read
   */
  public static History open(Path book) throws InputException, IOException {
    Path file = book.resolve(HISTORY);
    if (!Files.exists(file)) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + book,
                  "has no history yet",
                  "run it over photos, or import measures, first")));
    }
    return History.open(file);
  }

  private static Map<String, Object> facts(Request request, Farm farm, List<Correction> obeyed) {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("judged", request.evening());
    facts.put("version", ProgramVersion.current().version());
    facts.put("started_at", request.startedAt());
    facts.put("book", request.book().toAbsolutePath().normalize());
    facts.put("book_sha256", farm.bookHash());
    facts.put("corrections", CorrectionNotes.lines(obeyed));
    return facts;
  }
}
