// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.raftgauge.batch.run.EveningOutlook;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.forecast.Amount;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.LookBackScore;
import org.raftgauge.core.forecast.RaftForecast;
import org.raftgauge.core.forecast.SupplyRow;
import org.raftgauge.core.grader.GraderHealth;

/** Words what is to come. */
final class GatherAhead {
  private static final int MOST_REMARKS = 12;
  private static final int FEW_RAFTS = 20;

  private final EveningOutlook outlook;
  private final EveningForecast forecast;
  private final CropBook book;
  private final Texts texts;

  private GatherAhead(EveningOutlook outlook, CropBook book) {
    this.outlook = outlook;
    this.forecast = outlook.forecast();
    this.book = book;
    this.texts = new Texts(book.units());
  }

  static Ahead of(EveningOutlook outlook, CropBook book) {
    GatherAhead gather = new GatherAhead(outlook, book);
    return new Ahead(
        outlook.forecast().rafts().stream().map(gather::raft).toList(),
        outlook.forecast().supply().stream().map(gather::supply).toList(),
        outlook.graders().stream().map(GatherAhead::grader).toList(),
        outlook.scores().stream().map(LookBackScore::words).toList(),
        gather.remarks(),
        gather.heads());
  }

  private ForecastLine raft(RaftForecast raft) {
    int day = shownDay(raft);
    Amount leaf = raft.areaCm2(day);
    Optional<Amount> weight = raft.weightG(day);
    RaftForecast.Who who = raft.who();
    return new ForecastLine(
        who.raft() + (who.lot().isEmpty() ? "" : ", lot " + who.lot()) + ", " + who.crop(),
        Texts.day(forecast.date(day)),
        heads(raft.heads(day)),
        leaf(leaf.mean()),
        leaves(leaf.lo80(), leaf.hi80()),
        weight.map(w -> texts.weight(w.mean())).orElse(""),
        weight.map(w -> texts.weights(w.lo80(), w.hi80())).orElse(""),
        weight.map(w -> texts.weights(w.lo95(), w.hi95())).orElse(""),
        ready(raft, weight.isPresent()));
  }

  /** Returns the day that is shown: when it is ready, else its own harvest day, else the last. */
  private int shownDay(RaftForecast raft) {
    int last = forecast.asked().rule().days();
    int ready = Math.min(last, raft.readyDay(0.5).orElse(last));
    LocalDate evening = forecast.date(0);
    return book.plantingsOn(raft.who().raft(), evening).stream()
        .filter(planting -> planting.crop().equals(raft.who().crop()))
        .flatMap(planting -> planting.harvestBy().stream())
        .mapToInt(day -> (int) ChronoUnit.DAYS.between(evening, day))
        .filter(day -> day >= 0 && day < ready)
        .min()
        .orElse(ready);
  }

  /** Returns the spread of head weights of each raft, of which weights can be told. */
  private Map<String, List<Ahead.Heads>> heads() {
    Map<String, List<Ahead.Heads>> heads = new TreeMap<>();
    for (RaftForecast raft : forecast.rafts()) {
      HeadChart.of(raft, forecast, texts.units())
          .ifPresent(
              chart -> heads.computeIfAbsent(raft.who().raft(), r -> new ArrayList<>()).add(chart));
    }
    return heads;
  }

  /** Words expected heads as forecast.csv does: losses to come take parts of one. */
  private static String heads(double heads) {
    return String.format(Locale.ROOT, "%.1f", heads).replaceFirst("\\.0$", "");
  }

  private String leaf(double cm2) {
    return texts.number(cm2) + " " + texts.areaUnit();
  }

  private String leaves(double lo, double hi) {
    return texts.number(lo) + " to " + texts.number(hi) + " " + texts.areaUnit();
  }

  private String ready(RaftForecast raft, boolean weighed) {
    if (!weighed || raft.who().harvest().isEmpty()) {
      return "";
    }
    return date(raft.readyDay(0.5))
        + " (80 %: "
        + date(raft.readyDay(0.1))
        + " to "
        + date(raft.readyDay(0.9))
        + ")";
  }

  private String date(OptionalInt day) {
    return day.isPresent() ? Texts.day(forecast.date(day.getAsInt())) : "later";
  }

  private Ahead.Supply supply(SupplyRow row) {
    String packs =
        row.packs().isPresent() ? ", " + Texts.whole(row.packs().getAsDouble()) + " packs" : "";
    return new Ahead.Supply(
        row.crop(),
        Texts.day(row.date()),
        readyRafts(row),
        Texts.whole(row.readyHeads()),
        texts.weight(row.readyG().mean()),
        texts.weights(row.readyG().lo80(), row.readyG().hi80()),
        texts.weights(row.readyG().lo95(), row.readyG().hi95()),
        texts.weight(row.salesG()) + packs);
  }

  private static Ahead.GraderLine grader(GraderHealth health) {
    return new Ahead.GraderLine(
        health.crop(),
        health.regime().toString(),
        String.valueOf(health.weighings()),
        Texts.percent(health.medianErrorShare()),
        Texts.count((int) health.ageDays(), "day"),
        health.advice(),
        health.why());
  }

  /** Says how many rafts are expected to be ready; of few a tenth counts. */
  private static String readyRafts(SupplyRow row) {
    double ready = row.readyRafts();
    String expected =
        row.rafts() < FEW_RAFTS ? String.format(Locale.ROOT, "%.1f", ready) : Texts.whole(ready);
    return expected + " of " + row.rafts();
  }

  /** Returns the remarks, and the warnings of rafts, each with how many rafts it holds for. */
  private List<String> remarks() {
    TreeMap<String, Integer> warnings = new TreeMap<>();
    for (RaftForecast raft : forecast.rafts()) {
      raft.generalWarnings(shownDay(raft)).forEach(w -> warnings.merge(w, 1, Integer::sum));
    }
    List<String> remarks = new ArrayList<>(outlook.remarks());
    warnings.forEach((w, n) -> remarks.add(Texts.count(n, "raft") + ": " + w));
    if (remarks.size() <= MOST_REMARKS) {
      return remarks;
    }
    List<String> some = new ArrayList<>(remarks.subList(0, MOST_REMARKS));
    some.add("and " + (remarks.size() - MOST_REMARKS) + " more, see forecast.csv");
    return some;
  }
}
