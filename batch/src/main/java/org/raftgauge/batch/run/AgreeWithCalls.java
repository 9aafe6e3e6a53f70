// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.evening.Agreement;
import org.raftgauge.core.evening.CompareCalls;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.report.AgreeTable;

/** Compares the head grower's calls with what the program said on those evenings. */
public final class AgreeWithCalls {

  private AgreeWithCalls() {}

  /**
   * Compares.
   *
   * @param folder the book's folder
   * @param farm the book
   * @return how they agree
   * @throws InputException if the book has no calls or no history
   * @throws IOException if the history cannot be read
   */
  public static Agreement of(Path folder, Farm farm) throws InputException, IOException {
    if (farm.book().diary().calls().isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "BOOK " + folder,
                  "has no calls",
                  "write the head grower's own words into calls.csv, some sites an evening")));
    }
    Map<LocalDate, Seen> evenings = new HashMap<>();
    try (History history = JudgeFolder.open(folder)) {
      return CompareCalls.of(
          farm.book(),
          (book, evening) ->
              JudgeHistory.verdicts(
                  book, evenings.computeIfAbsent(evening, e -> seen(history, farm, e)), evening));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static Seen seen(History history, Farm farm, LocalDate evening) {
    try {
      return JudgeHistory.seen(history, farm, evening);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Publishes the comparison as a folder.
   *
   * @param folder the book's folder
   * @param out folder for the results
   * @param agreement the comparison
   * @param lines the same in words
   * @throws InputException if publishing would touch anything but earlier results
   * @throws IOException if it cannot be written
   */
  public static void publish(Path folder, Path out, Agreement agreement, List<String> lines)
      throws InputException, IOException {
    OutFolder.check(out, folder);
    Path place = out.toAbsolutePath().normalize();
    try (RunDraft draft = RunDraft.start(place.getParent())) {
      draft.write(
          to -> {
            Files.writeString(to.resolve("agree.csv"), AgreeTable.csv(agreement));
            Files.writeString(to.resolve("agree.txt"), String.join("\n", lines) + "\n");
            return true;
          });
      Map<String, Object> facts = new LinkedHashMap<>();
      facts.put("version", ProgramVersion.current().version());
      facts.put("calls", agreement.cases().size());
      String json = RunJson.text(facts, draft.files());
      draft.write(to -> Files.writeString(to.resolve(RunJson.FILE), json) != null);
      draft.publish(place);
    }
  }
}
