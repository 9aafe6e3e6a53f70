// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** The workplace on the class path, looked for when it is first needed: help needs none. */
final class InstalledWorkplace implements Workplace {

  @Override
  public OpenBook open(Path book) throws InputException {
    return installed().open(book);
  }

  @Override
  public FoundPhotos photos(Path photos) throws InputException {
    return installed().photos(photos);
  }

  @Override
  public List<Problem> check(Path book, Optional<Path> photos) {
    return installed().check(book, photos);
  }

  private static Workplace installed() {
    return ServiceLoader.load(Workplace.class)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("this build has no measuring workplace"));
  }
}
