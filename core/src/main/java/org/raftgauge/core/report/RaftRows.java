// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.function.Function;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;

/**
 * A raft of a photo that counts, with the rows of its sites: one row of {@code rafts.csv} and some
 * of {@code sites.csv}.
 *
 * @param photo the photo
 * @param raft what it says of the raft
 * @param sites the rows of its planted sites; of every site where no planting explains the raft
 * @param doubt why the raft as a whole is doubted (held, unassigned), or empty
 * @param repeatabilityLn standard deviation of ln(area) of one photo, from this one and another of
 *     the same evening, where there is one
 */
public record RaftRows(
    PhotoMeasure photo,
    RaftMeasure raft,
    List<SiteRow> sites,
    String doubt,
    OptionalDouble repeatabilityLn) {

  /** The stable order of rows: raft id, then photo, then slot. */
  public static final Comparator<RaftRows> ORDER =
      Comparator.<RaftRows, String>comparing(r -> r.raft().raft().orElse(""))
          .thenComparing(r -> r.photo().photo())
          .thenComparing(r -> r.raft().slot());

  /** Copies the rows. */
  public RaftRows {
    sites = List.copyOf(sites);
  }

  /** Returns the plantings on the raft, each once, in the order of the sites. */
  List<Planting> plantings() {
    return sites.stream()
        .flatMap(s -> s.plant().stream())
        .map(SitePlant::planting)
        .distinct()
        .toList();
  }

  /** Returns the distinct values of a text of the plantings, sorted and separated by {@code ;}. */
  String each(Function<Planting, String> text) {
    TreeSet<String> values = new TreeSet<>();
    plantings().stream().map(text).filter(t -> !t.isEmpty()).forEach(values::add);
    return String.join(";", values);
  }

  /** Returns the days after transplant that all plants share, else nothing. */
  public OptionalDouble dat() {
    List<OptionalDouble> ages =
        sites.stream()
            .map(SiteRow::plant)
            .flatMap(Optional::stream)
            .map(SitePlant::dat)
            .distinct()
            .toList();
    return ages.size() == 1 ? ages.get(0) : OptionalDouble.empty();
  }

  /** Returns the projected areas of the sites that have canopy and are not held, cm2, ascending. */
  List<Double> areasCm2() {
    List<Double> areas = new ArrayList<>();
    for (SiteRow row : sites) {
      OptionalDouble area = row.site().projectedAreaCm2();
      if (row.site().held().isEmpty() && area.isPresent() && area.getAsDouble() > 0) {
        areas.add(area.getAsDouble());
      }
    }
    areas.sort(Comparator.naturalOrder());
    return areas;
  }

  /**
   * Sums the projected areas of the sites in the rows.
   *
   * @return cm2; absent where the whole raft is held
   */
  public OptionalDouble totalAreaCm2() {
    boolean measured =
        sites.stream()
            .anyMatch(s -> s.site().held().isEmpty() && s.site().projectedAreaCm2().isPresent());
    return measured
        ? OptionalDouble.of(areasCm2().stream().mapToDouble(a -> a).sum())
        : OptionalDouble.empty();
  }
}
