// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.batch.store.RaftDays;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.evening.CloseEvening;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.MoreTasks;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.evening.StationDoubt;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.track.Judged;

/** Judges an evening from the history alone. */
public final class JudgeHistory {

  private JudgeHistory() {}

  /**
   * Closes an evening and says what is to come.
   *
   * @param measures everything measured, as corrected by then
   * @param farm the book
   * @param asked which evening, by which corrections
   * @param forecasts tells what is to come
   * @return what it came to, with the tasks that the outlook gives
   * @throws IOException if the history cannot be read
   */
  public static Judgement of(Measures measures, Farm farm, Asked asked, ForecastSource forecasts)
      throws IOException {
    LocalDate evening = asked.evening();
    CropBook book = BookAsOf.seenBefore(farm.book(), asked.correctedBy());
    Then then = Then.of(farm, evening);
    LocalDate needed = then.needs().first();
    LocalDate first = forecasts.firstDay(evening).minusDays(1);
    // Read and settled once: both keep to what is at hand.
    measures.takenBetween(first.isBefore(needed) ? first : needed, evening.plusDays(2));
    EveningLooks looks = EveningLooks.of(measures, photos(measures, then), then.farm());
    AtOnce.Both<Optional<EveningOutlook>, EveningResult> both =
        AtOnce.of(
            () -> forecasts.from(looks, evening, asked.correctedBy()),
            () ->
                CloseEvening.of(
                    new CloseEvening.Asked(book, looks.seen(), evening, forecasts.graders()),
                    new OnAllCores()));
    return new Judgement(withTasks(both.second(), both.first(), book), both.first());
  }

  /**
   * What is asked.
   *
   * @param evening the evening; what is later has no influence
   * @param correctedBy corrections that were entered, and worklist rows that were marked, at this
   *     moment or later are not looked at
   */
  public record Asked(LocalDate evening, Instant correctedBy) {}

  /**
   * Closes an evening whose stations were charted elsewhere.
   *
   * @param sources what is known
   * @param evening the evening
   * @param forecasts tells what is to come
   * @return what it came to, with the tasks that the outlook gives
   * @throws IOException if the history cannot be read
   */
  public static Judgement of(Sources sources, LocalDate evening, ForecastSource forecasts)
      throws IOException {
    Farm farm = sources.farm();
    Then then = Then.of(farm, evening);
    StationDoubts doubts = StationDoubts.of(sources.doubts(), then.farm());
    Seen seen = CollectSeen.of(photos(sources.measures(), then), doubts, then.farm());
    EveningResult closed = CloseEvening.of(farm.book(), seen, evening, forecasts.graders());
    Optional<EveningOutlook> ahead = forecasts.from(evening, Instant.MAX);
    return new Judgement(withTasks(closed, ahead, farm.book()), ahead);
  }

  /**
   * What an evening is judged from.
   *
   * @param measures those of at least the photos that the evening needs ({@link #needs})
   * @param farm the book
   * @param doubts what the charts of the stations say
   */
  public record Sources(Measures measures, Farm farm, List<StationDoubt> doubts) {

    /** Copies the list. */
    public Sources {
      doubts = List.copyOf(doubts);
    }
  }

  /**
   * What an evening came to.
   *
   * @param result verdicts, curves and worklist
   * @param outlook what is to come, where that can be told
   */
  public record Judgement(EveningResult result, Optional<EveningOutlook> outlook) {}

  /**
   * Says which photos an evening is judged from.
   *
   * @param farm the book
   * @param evening the evening
   * @return the days of all rafts, and of single rafts of past cycles
   */
  public static Needs needs(Farm farm, LocalDate evening) {
    return Then.of(farm, evening).needs();
  }

  /** A farm as known by an evening; to turn the pages of its book back takes time. */
  private record Then(Farm farm, LocalDate evening) {
    static Then of(Farm farm, LocalDate evening) {
      return new Then(farm.asOf(evening), evening);
    }

    Needs needs() {
      LocalDate first = oldest(farm, evening).minusDays(1);
      return new Needs(first, evening.plusDays(2), PastPlantings.of(farm.book(), evening));
    }
  }

  /**
   * Photos, by the dates written in their times: a photo's own offset may put it on the day before
   * or after the farm's.
   *
   * @param first the first day of which all rafts are needed
   * @param last the last such day
   * @param past days of rafts of past cycles
   */
  public record Needs(LocalDate first, LocalDate last, List<RaftDays> past) {

    /** Copies the list. */
    public Needs {
      past = List.copyOf(past);
    }
  }

  /** Adds to an evening's worklist what its outlook gives to do. */
  static EveningResult withTasks(
      EveningResult judged, Optional<EveningOutlook> ahead, CropBook book) {
    return ahead.map(outlook -> MoreTasks.with(judged, outlook.tasks(), book)).orElse(judged);
  }

  /** Gives the verdicts of an evening alone, by a book that may have other limits. */
  static List<Judged> verdicts(CropBook book, Seen seen, LocalDate evening) {
    return CloseEvening.verdicts(book, seen, evening);
  }

  /**
   * Returns what the photos that count said up to an evening of the plants that stand then, and of
   * the past cycles that they are held against.
   */
  static Seen seen(Measures measures, Farm farm, LocalDate evening) throws IOException {
    Then then = Then.of(farm, evening);
    return EveningLooks.of(measures, photos(measures, then), then.farm()).seen();
  }

  private static List<PhotoMeasure> photos(Measures measures, Then then) throws IOException {
    Needs needs = then.needs();
    Map<String, PhotoMeasure> photos = new TreeMap<>();
    take(measures.takenBetween(needs.first(), needs.last()), photos);
    for (RaftDays past : needs.past()) {
      if (past.first().isBefore(needs.first())) {
        take(measures.takenBetween(past), photos);
      }
    }
    return photos.values().stream()
        .filter(p -> !then.farm().evening(p.takenAt().orElseThrow()).isAfter(then.evening()))
        .toList();
  }

  private static void take(List<Kept> kept, Map<String, PhotoMeasure> photos) {
    kept.forEach(k -> photos.put(k.measure().sha256(), k.measure()));
  }

  /** Returns the day on which the oldest of the plants that stand on an evening was set there. */
  private static LocalDate oldest(Farm farm, LocalDate evening) {
    Instant end = farm.farmDay().start(evening.plusDays(1)).minusNanos(1);
    return farm.book().plants().stream()
        .filter(life -> life.stays().stream().anyMatch(stay -> stay.holdsAt(end)))
        .map(life -> life.stays().get(0))
        .map(PlantLife.Stay::from)
        .min(Instant::compareTo)
        .map(from -> farm.farmDay().evening(from))
        .orElse(evening);
  }
}
