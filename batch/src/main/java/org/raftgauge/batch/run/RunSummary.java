// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.measure.PhotoStatus;

/**
 * What a run came to.
 *
 * @param folder where it is published
 * @param photos number of photos by status
 * @param rafts number of the book's rafts in the tables, held ones too, each once
 * @param sites number of their sites, each raft as on its latest photo
 * @param totalAreaCm2 projected leaf area of all of them, cm2
 * @param unassigned rafts measured and kept that no planting explains; not in the numbers above
 * @param missing for each evening of its photos the rafts expected then that no photo shows
 * @param attention photos that were held or refused, or show a raft that is held or unassigned,
 *     with reason and remedy, a line each
 * @param notes what else a person should know, a line each
 * @param judged verdicts, curves and worklist of the latest evening, where there is one
 * @param outlook what is to come from it, where that can be told
 * @param corrections those that it obeys
 */
public record RunSummary(
    Path folder,
    Map<PhotoStatus, Integer> photos,
    int rafts,
    int sites,
    double totalAreaCm2,
    List<Unassigned> unassigned,
    NavigableMap<LocalDate, NavigableSet<String>> missing,
    List<String> attention,
    List<String> notes,
    Optional<EveningResult> judged,
    Optional<EveningOutlook> outlook,
    List<Correction> corrections) {

  /** Copies the lists. */
  public RunSummary {
    unassigned = List.copyOf(unassigned);
    missing = Collections.unmodifiableNavigableMap(new TreeMap<>(missing));
    attention = List.copyOf(attention);
    notes = List.copyOf(notes);
    corrections = List.copyOf(corrections);
  }

  /** Returns the same with what the latest evening came to and what is to come. */
  RunSummary with(EveningResult result, Optional<EveningOutlook> ahead) {
    return new RunSummary(
        folder,
        photos,
        rafts,
        sites,
        totalAreaCm2,
        unassigned,
        missing,
        attention,
        notes,
        Optional.of(result),
        ahead,
        corrections);
  }

  /**
   * Leaves out evenings that are still to come, by a camera's wrong clock, so that none of them is
   * taken for tonight. Where all are, they stay: then it is this machine's clock that is doubted.
   *
   * @param last the latest evening that can have been
   * @return the same, with a note where evenings were left out
   */
  RunSummary until(LocalDate last) {
    NavigableMap<LocalDate, NavigableSet<String>> been = missing.headMap(last, true);
    if (been.isEmpty() || been.size() == missing.size()) {
      return this;
    }
    List<String> more = new ArrayList<>(notes);
    more.add(
        "photos of "
            + missing.tailMap(last, false).keySet().stream()
                .map(LocalDate::toString)
                .collect(Collectors.joining(", "))
            + " are dated in the future: measured and kept, not taken for tonight; set the"
            + " camera's clock, and give taken_at in manifest.csv");
    return new RunSummary(
        folder,
        photos,
        rafts,
        sites,
        totalAreaCm2,
        unassigned,
        been,
        attention,
        more,
        judged,
        outlook,
        corrections);
  }

  /** Returns the same with corrections that it obeys. */
  RunSummary corrected(List<Correction> obeyed) {
    return new RunSummary(
        folder,
        photos,
        rafts,
        sites,
        totalAreaCm2,
        unassigned,
        missing,
        attention,
        notes,
        judged,
        outlook,
        obeyed);
  }

  /** Returns the same with a note more. */
  RunSummary noted(String note) {
    List<String> more = new ArrayList<>(notes);
    more.add(note);
    return new RunSummary(
        folder,
        photos,
        rafts,
        sites,
        totalAreaCm2,
        unassigned,
        missing,
        attention,
        more,
        judged,
        outlook,
        corrections);
  }

  /** Returns the latest evening of its photos, where there is one. */
  public Optional<LocalDate> evening() {
    return missing.isEmpty() ? Optional.empty() : Optional.of(missing.lastKey());
  }

  /** Returns the rafts expected on the latest evening that no photo shows, in order. */
  public NavigableSet<String> notPhotographed() {
    return missing.isEmpty() ? Collections.emptyNavigableSet() : missing.lastEntry().getValue();
  }
}
