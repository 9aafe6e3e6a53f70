// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.RunRecord;
import org.raftgauge.core.problem.InputException;

/**
 * Runs over a folder of photos: measures, keeps the measures in the book's history, and publishes a
 * folder with tables and pictures.
 *
 * <p>The history is looked through for damage first and is saved as photos are measured, so a run
 * that was killed loses little and doubles nothing when it is run again; the folder stands whole in
 * its place or not at all.
 */
public final class RunFolder {
  private static final String HISTORY = "history.db";

  private RunFolder() {}

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
  @SuppressWarnings("try") // the lock is held, not used
  public static RunSummary run(RunRequest request, FoundPhotos found, Tools tools)
      throws InputException, IOException {
    OutFolder.check(request);
    try (BookLock lock =
            BookLock.take(request.book(), request.patience(), tools.progress()::waitingFor);
        History history = History.open(request.book().resolve(HISTORY), tools.steps());
        RunDraft draft = RunDraft.start(RunPlace.parent(request))) {
      history.quickCheck();
      noteWhatStands(history);
      Thread hook = new Thread(() -> closeQuietly(draft), "remove unfinished run");
      Runtime.getRuntime().addShutdownHook(hook);
      try {
        return new OneRun(request, found, tools, history).into(draft);
      } finally {
        unhook(hook);
      }
    }
  }

  /** Notes runs that were killed between publishing their folder and noting it. */
  private static void noteWhatStands(History history) throws IOException {
    for (RunRecord.Unpublished run : history.unpublished()) {
      if (RunJson.isOf(run.folder(), run.run())) {
        history.published(run.run());
      }
    }
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
