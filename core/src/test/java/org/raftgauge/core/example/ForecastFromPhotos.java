// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.example;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.forecast.Asked;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.ForecastEvening;
import org.raftgauge.core.forecast.ForecastRule;
import org.raftgauge.core.forecast.RaftForecast;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.FitGrowth;
import org.raftgauge.core.growth.FitRule;
import org.raftgauge.core.growth.Fitted;
import org.raftgauge.core.growth.GrowthFit;
import org.raftgauge.core.growth.NotFitted;
import org.raftgauge.core.growth.Series;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;

/**
 * Measures photos with the library, fits the growth of each plant seen on them, and forecasts the
 * area of its raft. For rafts that were photographed once an evening and whose markers tell the
 * corner nearest A1; the program itself also settles which photo of an evening counts, and which
 * way round a board lay ({@code core.history}).
 */
public final class ForecastFromPhotos {

  private ForecastFromPhotos() {}

  /**
   * Forecasts from the evening of the last photo.
   *
   * @param args the crop book's folder, the photo folder, then each photo's path below it
   */
  public static void main(String[] args) throws IOException {
    CropBook book = CropBook.read(Path.of(args[0])).book();
    List<SiteLook> looks = new ArrayList<>();
    for (String photo : Arrays.asList(args).subList(2, args.length)) {
      byte[] bytes = Files.readAllBytes(Path.of(args[1], photo));
      looks.addAll(looks(MeasurePhoto.measure(bytes, PhotoFacts.of(photo), book).measure()));
    }
    LocalDate evening =
        looks.stream()
            .map(look -> book.farmDay().evening(look.takenAt().toInstant()))
            .max(LocalDate::compareTo)
            .orElseThrow();
    for (PlantSeries plant : CollectSeries.upTo(book, looks, evening)) {
      System.out.println(plant.planting().raft() + " " + plant.site() + " " + growth(plant));
    }
    Asked asked = new Asked(evening, ForecastRule.defaults());
    EveningForecast forecast = ForecastEvening.of(book, looks, Map.of(), asked);
    for (RaftForecast raft : forecast.rafts()) {
      System.out.printf(
          Locale.ROOT,
          "%s on %s: %.0f cm2 (80 %%: %.0f to %.0f)%n",
          raft.who().raft(),
          forecast.date(7),
          raft.areaCm2(7).mean(),
          raft.areaCm2(7).lo80(),
          raft.areaCm2(7).hi80());
    }
    forecast.remarks().forEach(System.out::println);
  }

  /** Takes what a photo says of the sites of rafts that it tells. */
  private static List<SiteLook> looks(PhotoMeasure photo) {
    List<SiteLook> looks = new ArrayList<>();
    for (RaftMeasure raft : photo.rafts()) {
      if (raft.raft().isPresent() && raft.held().isEmpty() && photo.takenAt().isPresent()) {
        String id = raft.raft().get();
        raft.sites()
            .forEach(
                site ->
                    looks.add(
                        new SiteLook(
                            photo.photo(), photo.station(), id, photo.takenAt().get(), site)));
      }
    }
    return looks;
  }

  /** Words a plant's growth rate on its last evening; areas of closed sites are lower bounds. */
  private static String growth(PlantSeries plant) {
    List<Sight> seen = plant.sights().stream().filter(Sight::hasArea).toList();
    boolean[] closed = new boolean[seen.size()];
    for (int i = 0; i < closed.length; i++) {
      closed[i] = seen.get(i).measure().closed();
    }
    Series series =
        Series.of(
                seen.stream().mapToDouble(Sight::ageDays).toArray(),
                seen.stream().mapToDouble(Sight::areaCm2).toArray())
            .withClosed(closed);
    FitRule rule = FitRule.defaults().withModels(CurveModel.GOMPERTZ);
    GrowthFit fit = FitGrowth.of(series, rule);
    if (fit instanceof NotFitted none) {
      return "has no curve of its own: " + none.reason();
    }
    return ((Fitted) fit)
        .rgrPerDay(plant.last().ageDays())
        .map(r -> String.format(Locale.ROOT, "grows by %.1f %% a day", 100 * r.value()))
        .orElse("has a curve that does not reach its last photo");
  }
}
