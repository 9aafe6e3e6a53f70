// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.report.PhotosTable;
import org.raftgauge.core.report.RaftsTable;
import org.raftgauge.core.report.SitesTable;

/** Writes a run's tables into its draft. */
final class FillDraft {
  /** The table of photos, which stands in the folder of every run and in no other. */
  static final String PHOTOS = "photos.csv";

  private final RunDraft draft;
  private final CropBook book;

  FillDraft(RunDraft draft, CropBook book) {
    this.draft = draft;
    this.book = book;
  }

  /** Writes the tables of what was measured. */
  void tables(Collected collected) throws IOException {
    draft.write(to -> write(to, collected));
  }

  private static boolean write(Path folder, Collected collected) throws IOException {
    Files.writeString(folder.resolve(PHOTOS), PhotosTable.csv(collected.photos()));
    Files.writeString(folder.resolve("sites.csv"), SitesTable.csv(collected.rafts()));
    Files.writeString(folder.resolve("rafts.csv"), RaftsTable.csv(collected.rafts()));
    return true;
  }

  /** Writes what the latest evening came to and what is to come, where there is one. */
  void evening(RunSummary summary) throws IOException {
    if (summary.judged().isPresent()) {
      draft.write(
          to ->
              EveningFiles.write(
                  to, summary.judged().get(), book, CorrectionNotes.line(summary.corrections())));
    }
    if (summary.outlook().isPresent()) {
      draft.write(to -> OutlookFiles.write(to, summary.outlook().get()));
    }
  }

  /** Writes {@code run.json}, last of all, for it lists the files. */
  void json(Map<String, Object> facts) throws IOException {
    String json = RunJson.text(facts, draft.files());
    draft.write(to -> Files.writeString(to.resolve(RunJson.FILE), json) != null);
  }
}
