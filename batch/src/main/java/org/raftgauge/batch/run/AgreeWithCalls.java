// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
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
   * Where the comparison is published.
   *
   * @param folder the book's folder
   * @param farm the book
   * @param out folder for the results
   */
  public record Request(Path folder, Farm farm, Path out) {}

  /** Cuts a site out of the picture of its board. */
  public interface Cutting {
    /**
     * Cuts.
     *
     * @param board picture of the upright board
     * @param layout of the board
     * @param site the site
     * @param to file to write
     * @throws IOException if a picture cannot be read or written
     */
    void cut(Path board, Layout layout, SiteId site, Path to) throws IOException;
  }

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
    try (History history = JudgeFolder.open(folder)) {
      return CompareCalls.of(
          farm.book(),
          evening -> JudgeHistory.verdicts(farm.book(), seen(history, farm, evening), evening));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static Seen seen(History history, Farm farm, LocalDate evening) {
    try {
      return JudgeHistory.seen(
          history.measures(farm.farmDay().start(evening.plusDays(1))), farm, evening);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Checks where the comparison is to be published.
   *
   * @param request what is asked for
   * @throws InputException if publishing would touch anything but earlier results
   */
  public static void check(Request request) throws InputException {
    OutFolder.check(request.out(), request.folder());
  }

  /**
   * Publishes the comparison as a folder.
   *
   * @param request what is asked for
   * @param agreement the comparison
   * @param lines the same in words
   * @param cutting cuts sites out of pictures of boards
   * @return what is left to say: where earlier results lie that cannot be removed
   * @throws InputException if publishing would touch anything but earlier results
   * @throws IOException if it cannot be written
   */
  public static Optional<String> publish(
      Request request, Agreement agreement, List<String> lines, Cutting cutting)
      throws InputException, IOException {
    check(request);
    Path place = request.out().toAbsolutePath().normalize();
    try (History history = JudgeFolder.open(request.folder());
        RunDraft draft = RunDraft.start(place.getParent())) {
      draft.write(
          to -> {
            CutDifferences cut = new CutDifferences(history, request.farm(), cutting);
            Map<Agreement.Case, String> pictures = cut.into(to, agreement);
            Files.writeString(
                to.resolve("agree.csv"),
                AgreeTable.csv(agreement, each -> pictures.getOrDefault(each, "")));
            Files.writeString(to.resolve("agree.txt"), String.join("\n", lines) + "\n");
            return true;
          });
      Map<String, Object> facts = new LinkedHashMap<>();
      facts.put("version", ProgramVersion.current().version());
      facts.put("calls", agreement.cases().size());
      String json = RunJson.text(facts, draft.files());
      draft.write(to -> Files.writeString(to.resolve(RunJson.FILE), json) != null);
      return draft.publish(place);
    }
  }
}
