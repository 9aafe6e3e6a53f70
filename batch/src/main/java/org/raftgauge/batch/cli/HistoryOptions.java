// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.raftgauge.batch.run.JudgeFolder;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Mixin;

/** Whose history: the options of every command on it. */
final class HistoryOptions {
  @Mixin private BookOptions book;

  Path folder(Console console) throws InputException {
    return book.find(console);
  }

  History open(Console console) throws InputException, IOException {
    return JudgeFolder.open(folder(console));
  }
}
