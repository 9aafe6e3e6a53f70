// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.OnlyRafts;
import picocli.CommandLine.Option;

/** Options that ask for some of the photos. */
final class ChoiceOptions {
  @Option(
      names = "--since",
      paramLabel = "DATE",
      description = "Only photos of this evening and later ones, as in 2026-04-14.")
  private LocalDate since;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      description = "Only photos of this evening and earlier ones.")
  private LocalDate to;

  @Option(
      names = "--raft",
      paramLabel = "ID",
      description = {
        "Only photos of this raft, as far as manifest, name or an earlier run tell; photos of"
            + " which nothing tells are measured too. May be given several times."
      })
  private Set<String> rafts = Set.of();

  /** Returns which photos are asked for. */
  ChoosePhotos photos() {
    return new ChoosePhotos(Optional.ofNullable(since), Optional.ofNullable(to), rafts);
  }

  /** Returns the farm as far as it is asked about. */
  Farm farm(Farm whole) {
    return rafts.isEmpty() ? whole : new OnlyRafts(whole, rafts);
  }
}
