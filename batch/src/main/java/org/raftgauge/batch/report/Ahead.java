// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.List;
import java.util.Map;
import org.raftgauge.batch.plot.Chart;

/**
 * What is to come, its numbers ready to be read with their units.
 *
 * @param rafts each raft on its ready day, or on the last day forecast
 * @param supply by crop and day
 * @param graders how each stands
 * @param scores how earlier forecasts came out, a sentence each
 * @param remarks what else a reader must know, a sentence each
 * @param heads the spread of head weights on each raft, of which weights can be told
 */
public record Ahead(
    List<ForecastLine> rafts,
    List<Supply> supply,
    List<GraderLine> graders,
    List<String> scores,
    List<String> remarks,
    Map<String, List<Heads>> heads) {

  /** Copies the lists. */
  public Ahead {
    rafts = List.copyOf(rafts);
    supply = List.copyOf(supply);
    graders = List.copyOf(graders);
    scores = List.copyOf(scores);
    remarks = List.copyOf(remarks);
    heads = Map.copyOf(heads);
  }

  /** Says whether the weight of any raft can be told. */
  public boolean isWeighed() {
    return rafts.stream().anyMatch(line -> !line.weight().isEmpty());
  }

  /**
   * How the weights of heads are spread.
   *
   * @param chart drawn
   * @param words said
   */
  public record Heads(Chart chart, String words) {}

  /** Returns that nothing is known. */
  static Ahead none() {
    return new Ahead(List.of(), List.of(), List.of(), List.of(), List.of(), Map.of());
  }

  /** Says whether there is anything to show. */
  public boolean isKnown() {
    return !rafts.isEmpty() || !graders.isEmpty() || !scores.isEmpty() || !remarks.isEmpty();
  }

  /**
   * What a crop can supply on a day if nothing is harvested before.
   *
   * @param crop the crop
   * @param day the day
   * @param rafts how many are ready, of how many
   * @param heads heads on them
   * @param weight the likeliest total
   * @param likely its 80 % interval
   * @param sure its 95 % interval
   * @param sales after trimming, with packs where the crop has them
   */
  public record Supply(
      String crop,
      String day,
      String rafts,
      String heads,
      String weight,
      String likely,
      String sure,
      String sales) {}

  /**
   * How a grader stands.
   *
   * @param crop of which crop
   * @param regime open or closed
   * @param weighings number that it was fitted on
   * @param error median error of a single plant
   * @param age of its last weighing
   * @param advice what to do
   * @param why the reason
   */
  public record GraderLine(
      String crop,
      String regime,
      String weighings,
      String error,
      String age,
      String advice,
      String why) {}
}
