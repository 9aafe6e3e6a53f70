// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.forecast;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.grade.CheckBook;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.batch.run.EveningLooks;
import org.raftgauge.batch.run.EveningOutlook;
import org.raftgauge.batch.run.ForecastSource;
import org.raftgauge.batch.run.KnownLooks;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.forecast.Asked;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.ForecastEvening;
import org.raftgauge.core.forecast.ForecastRule;
import org.raftgauge.core.forecast.HarvestPlan;
import org.raftgauge.core.forecast.HarvestTasks;
import org.raftgauge.core.forecast.LookBack;
import org.raftgauge.core.forecast.LookBackScore;
import org.raftgauge.core.forecast.Resources;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderHealth;
import org.raftgauge.core.history.SiteLook;

/**
 * Tells what is to come from an evening by the book and its history, as {@code run} and {@code
 * judge} do each evening. A grader that cannot be read, or that knows more than the evening, costs
 * the weights of its crop, not the run.
 */
public final class ForecastOfEvening implements ForecastSource {
  /** Days before a harvest from which its replays begin, with room for a week's lead. */
  private static final long REPLAY_DAYS = 7;

  private final CropBook book;
  private final Path folder;
  private final Looks looks;

  /**
   * Wraps a book.
   *
   * @param book the crop book as read
   * @param folder of the book
   */
  public ForecastOfEvening(CropBook book, Path folder) {
    this(
        book,
        folder,
        new Looks() {
          @Override
          public List<SiteLook> between(CropBook known, BookLooks.Evenings evenings)
              throws IOException {
            return BookLooks.between(known, folder, evenings);
          }

          @Override
          public List<Correction> entered() throws IOException {
            return BookLooks.corrections(folder);
          }
        });
  }

  /**
   * Wraps a book whose photos are known from elsewhere.
   *
   * @param book the crop book as read
   * @param folder of the book, for its graders
   * @param looks tells what the photos that count said
   */
  public ForecastOfEvening(CropBook book, Path folder, Looks looks) {
    this.book = book;
    this.folder = folder;
    this.looks = looks;
  }

  /** Tells what photos that count said. */
  public interface Looks {

    /**
     * Tells.
     *
     * @param book the crop book as known
     * @param evenings of which evenings
     * @return looks in a stable order
     * @throws IOException if they cannot be read
     */
    List<SiteLook> between(CropBook book, BookLooks.Evenings evenings) throws IOException;

    /**
     * Returns every correction ever entered, in the order of their numbers; none where nobody
     * corrects.
     *
     * @throws IOException if they cannot be read
     */
    default List<Correction> entered() throws IOException {
      return List.of();
    }
  }

  /**
   * Returns the first day of which photos are needed to forecast from an evening.
   *
   * @param book the crop book as read
   * @param evening the farm's day
   * @return that of the oldest plants, past cycles and replays that are looked at
   */
  public static LocalDate firstDay(CropBook book, LocalDate evening) {
    CropBook known = BookAsOf.of(book, evening);
    return known.expectedRafts(evening).isEmpty()
        ? evening
        : first(known, LookBack.Leads.latest(known), evening);
  }

  @Override
  public Optional<EveningOutlook> from(LocalDate evening, Instant correctedBy) throws IOException {
    return from(BookAsOf.of(book, evening), looks, evening, correctedBy);
  }

  @Override
  public Optional<EveningOutlook> from(EveningLooks hand, LocalDate evening, Instant correctedBy)
      throws IOException {
    return from(
        hand.book(),
        new Looks() {
          @Override
          public List<SiteLook> between(CropBook known, BookLooks.Evenings evenings)
              throws IOException {
            return hand.between(evenings);
          }

          @Override
          public List<Correction> entered() throws IOException {
            return hand.measures().entered();
          }
        },
        evening,
        correctedBy);
  }

  private Optional<EveningOutlook> from(
      CropBook known, Looks source, LocalDate evening, Instant correctedBy) throws IOException {
    if (known.expectedRafts(evening).isEmpty()) {
      return Optional.empty();
    }
    KnownGraders read = KnownGraders.of(known, folder);
    Map<String, Grader> graders = read.by(known, evening);
    LookBack.Leads leads = LookBack.Leads.latest(known);
    LocalDate first = first(known, leads, evening);
    BookLooks.Evenings evenings = new BookLooks.Evenings(first, evening, correctedBy);
    List<SiteLook> seen = source.between(known, evenings);
    KnownLooks replayed =
        new KnownLooks(
                source.entered(),
                known.farmDay(),
                by -> source.between(known, evenings.correctedBy(by)))
            .with(correctedBy, seen);
    EveningForecast forecast =
        ForecastEvening.of(known, seen, graders, new Asked(evening, ForecastRule.defaults()));
    List<GraderHealth> health = new ArrayList<>();
    graders.values().forEach(g -> health.addAll(CheckBook.health(known, seen, g, evening)));
    List<Task> tasks = new ArrayList<>(HarvestTasks.of(forecast, known));
    tasks.addAll(new WeighTasks(known, seen, evening).of(health, graders));
    return Optional.of(
        new EveningOutlook(
            forecast,
            HarvestPlan.propose(forecast),
            health,
            LookBackScore.of(LookBack.of(known, replayed, graders, leads)),
            tasks,
            read.remarks(known, forecast),
            Resources.of(known)));
  }

  @Override
  public LocalDate firstDay(LocalDate evening) {
    return firstDay(book, evening);
  }

  @Override
  public Map<String, Grader> graders() {
    return KnownGraders.of(book, folder).graders();
  }

  /** Returns the first day of which photos are needed, by the forecast and the replays. */
  private static LocalDate first(CropBook known, LookBack.Leads leads, LocalDate evening) {
    LocalDate first = ForecastEvening.firstDay(known, evening);
    if (leads.since().isAfter(evening)) {
      return first;
    }
    LocalDate replay = leads.since().minusDays(REPLAY_DAYS);
    LocalDate earlier = ForecastEvening.firstDay(BookAsOf.of(known, replay), replay);
    return earlier.isBefore(first) ? earlier : first;
  }
}
