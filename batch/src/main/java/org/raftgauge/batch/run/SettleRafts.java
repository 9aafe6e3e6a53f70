// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.evening.StationDoubt;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * The second pass over photos that another engine measured: the same steps as in a run on a folder,
 * without its history.
 */
public final class SettleRafts {

  private SettleRafts() {}

  /**
   * Photos that show rafts which no other photo shows together with further rafts.
   *
   * @param run the photos to settle, as corrected, in the order of their paths; copies of the same
   *     bytes stand together here
   * @param earlier other photos of the same rafts, each of other bytes
   */
  public record Photos(List<Measured> run, List<PhotoMeasure> earlier) {

    /** Copies the lists. */
    public Photos {
      run = List.copyOf(run);
      earlier = List.copyOf(earlier);
    }
  }

  /**
   * Charts the stations that there are photos of.
   *
   * @param measures all photos of the stations, as corrected
   * @param farm the book
   * @return an entry for each evening on which a station was not as it was
   * @throws IOException if the history cannot be read
   */
  public static List<StationDoubt> doubts(Measures measures, Farm farm) throws IOException {
    return StationDoubts.of(measures, farm).all();
  }

  /**
   * Settles.
   *
   * @param photos the photos
   * @param doubts what the charts of their stations say
   * @param farm the book
   * @return what goes into the tables
   */
  public static Collected settle(Photos photos, List<StationDoubt> doubts, Farm farm) {
    SettlePhotos second =
        SettlePhotos.of(
            new SettlePhotos.Looked(FinalPhotos.distinct(photos.run()), photos.earlier()),
            Corrections.of(List.of(), Instant.MAX),
            StationDoubts.of(doubts, farm),
            farm);
    List<Settled> settled = second.photos();
    return CollectRows.collect(FinalPhotos.of(photos.run(), settled), settled, farm);
  }
}
