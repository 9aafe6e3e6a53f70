// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.raftgauge.batch.run.BookLooks;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.WalkingOrder;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.PickSites;
import org.raftgauge.core.grader.Prediction;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.Sighting;
import org.raftgauge.core.grader.Traits;
import org.raftgauge.core.history.Grown;
import org.raftgauge.core.history.SiteLook;

/** Chooses the sites of a book to weigh, and writes them as a list and a sheet to print. */
public final class PickBook {
  /** A photo older than this does not tell what stands there: a working value. */
  private static final Duration FRESH = Duration.ofHours(24);

  /**
   * What is asked for.
   *
   * @param folder of the crop book
   * @param crop whose sites
   * @param count number of sites
   * @param seed of the random choice
   * @param at when they will be weighed
   * @param out folder for list and sheet
   */
  public record Request(
      Path folder, String crop, int count, long seed, OffsetDateTime at, Path out) {}

  /**
   * A site to weigh, with what the list says of it.
   *
   * @param pick the site
   * @param planting what grows there
   * @param areaCm2 its area in the last photo
   * @param weightG its predicted weight, where a grader tells it
   */
  public record Chosen(
      PickSites.Pick pick, Planting planting, double areaCm2, Optional<Prediction> weightG) {}

  private record Seen(Sighting sighting, Grown grown, Optional<Prediction> weight) {
    PickSites.Candidate candidate() {
      double area = sighting.areaCm2().getAsDouble();
      return new PickSites.Candidate(
          sighting.raft(),
          sighting.site(),
          Regime.of(sighting.closed()),
          weight.map(Prediction::medianG).orElse(area));
    }
  }

  private PickBook() {}

  /**
   * Picks and writes {@code picks.csv} and {@code picks.html}.
   *
   * @param book the crop book as read
   * @param grader the crop's, where there is one; without it sites are spread over area
   * @param request what is asked for
   * @return number of sites picked; 0 where no photo of the last 24 hours shows any, and then
   *     nothing is written
   * @throws IOException if the history cannot be read or a file not written
   */
  public static int pick(CropBook book, Optional<Grader> grader, Request request)
      throws IOException {
    Instant at = request.at().toInstant();
    List<SiteLook> looks =
        BookLooks.upTo(book, request.folder(), book.farmDay().evening(at).plusDays(1));
    List<Chosen> chosen = choose(book, looks, grader, request);
    if (chosen.isEmpty()) {
      return 0;
    }
    Files.createDirectories(request.out());
    PicksTable.write(request.out().resolve("picks.csv"), chosen);
    Files.writeString(
        request.out().resolve("picks.html"),
        PicksPage.of(book, request, chosen),
        StandardCharsets.UTF_8);
    return chosen.size();
  }

  /**
   * Chooses.
   *
   * @param book the crop book
   * @param looks what photos that count said
   * @param grader the crop's, where there is one
   * @param request crop, count, seed and time; its folders are not looked at
   * @return the sites in the order of a walk along the ponds; none where no photo of the 24 hours
   *     before shows any
   */
  public static List<Chosen> choose(
      CropBook book, List<SiteLook> looks, Optional<Grader> grader, Request request) {
    List<Seen> seen = seen(new BookMeasures(book, looks), grader, request);
    List<PickSites.Candidate> candidates = seen.stream().map(Seen::candidate).toList();
    List<Chosen> chosen = new ArrayList<>();
    if (!seen.isEmpty()) {
      for (PickSites.Pick pick : PickSites.pick(candidates, request.count(), request.seed())) {
        Seen one = seen.get(candidates.indexOf(pick.candidate()));
        double area = one.sighting().areaCm2().getAsDouble();
        chosen.add(new Chosen(pick, one.grown().planting(), area, one.weight()));
      }
    }
    chosen.sort(
        Comparator.comparing(Chosen::planting, WalkingOrder.plantings())
            .thenComparing(c -> c.pick().candidate().site()));
    return chosen;
  }

  /** Returns the last fresh look at each plant that still stands: not held, empty or brown. */
  private static List<Seen> seen(BookMeasures measures, Optional<Grader> grader, Request request) {
    Instant at = request.at().toInstant();
    TreeSet<String> rafts = new TreeSet<>();
    for (Planting planting : measures.book().plantings()) {
      if (planting.crop().equals(request.crop())) {
        rafts.add(planting.raft());
      }
    }
    Map<String, Sighting> latest = new LinkedHashMap<>();
    measures.sightings(rafts).stream()
        .filter(s -> !s.takenAt().toInstant().isAfter(at))
        .filter(s -> Duration.between(s.takenAt().toInstant(), at).compareTo(FRESH) <= 0)
        .sorted(Comparator.comparing(s -> s.takenAt().toInstant()))
        .forEach(s -> latest.put(s.plant(), s));
    latest.keySet().removeAll(measures.brown(at));
    List<Seen> seen = new ArrayList<>();
    for (Sighting sighting : latest.values()) {
      Optional<Grown> grown = measures.grown(sighting, at);
      boolean stands =
          grown.filter(g -> g.plant().equals(sighting.plant())).isPresent()
              && grown.get().planting().crop().equals(request.crop());
      if (stands && sighting.held().isEmpty() && sighting.areaCm2().orElse(0) > 0) {
        String variety = grown.get().planting().variety();
        Traits traits = Traits.ofArea(variety, sighting.areaCm2().getAsDouble());
        // A closed site's area is a lower bound: its weight by area orders the sites all the same.
        Optional<Prediction> weight = grader.flatMap(g -> g.predict(Regime.OPEN, traits));
        seen.add(new Seen(sighting, grown.get(), weight));
      }
    }
    return seen;
  }
}
