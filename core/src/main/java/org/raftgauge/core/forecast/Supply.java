// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Adds up, by crop and day, what is ready. */
final class Supply {
  private final Asked asked;

  Supply(Asked asked) {
    this.asked = asked;
  }

  List<SupplyRow> of(List<RaftForecast> rafts) {
    Map<String, List<RaftForecast>> crops = new TreeMap<>();
    for (RaftForecast raft : rafts) {
      if (raft.readyBy(Integer.MAX_VALUE, 0)) {
        crops.computeIfAbsent(raft.who().crop(), c -> new ArrayList<>()).add(raft);
      }
    }
    List<SupplyRow> rows = new ArrayList<>();
    crops.forEach(
        (crop, of) -> {
          for (int d = 0; d <= asked.rule().days(); d++) {
            rows.add(row(crop, of, d));
          }
        });
    return rows;
  }

  private SupplyRow row(String crop, List<RaftForecast> rafts, int day) {
    int draws = asked.rule().draws();
    double[] ready = new double[draws];
    double newly = 0;
    double count = 0;
    double heads = 0;
    double sales = 0;
    for (RaftForecast raft : rafts) {
      Totals weight = raft.day(day).weight().orElseThrow();
      double own = 0;
      for (int s = 0; s < draws; s++) {
        if (raft.readyBy(day, s)) {
          ready[s] += weight.get(s);
          own += weight.get(s) / draws;
          count += 1.0 / draws;
          heads += raft.heads(day) / draws;
          newly += raft.readyBy(day - 1, s) ? 0 : weight.get(s) / draws;
        }
      }
      sales += own * (1 - raft.who().harvest().orElseThrow().trimShare());
    }
    return new SupplyRow(
        crop,
        asked.evening().plusDays(day),
        rafts.size(),
        count,
        heads,
        Totals.of(ready).amount(),
        newly,
        sales,
        packs(rafts, sales));
  }

  private static OptionalDouble packs(List<RaftForecast> rafts, double sales) {
    OptionalDouble pack = rafts.get(0).who().harvest().orElseThrow().packG();
    return pack.isPresent() ? OptionalDouble.of(Math.floor(sales / pack.getAsDouble())) : pack;
  }
}
