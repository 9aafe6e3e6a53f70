// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.util.List;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * What the photos said that an evening is closed from. Who forecasts from the evening asks for the
 * same photos, unless past cycles are looked at, and they are settled once.
 */
public final class EveningLooks {
  private final Measures measures;
  private final StationDoubts doubts;
  private final List<PhotoMeasure> photos;
  private final Farm farm;
  private final Seen seen;

  private EveningLooks(
      Measures measures, StationDoubts doubts, List<PhotoMeasure> photos, Farm farm) {
    this.measures = measures;
    this.doubts = doubts;
    this.photos = photos;
    this.farm = farm;
    this.seen = CollectSeen.of(photos, doubts, farm);
  }

  /**
   * Settles photos.
   *
   * @param measures everything measured, as corrected
   * @param photos those to settle, in the order of their hashes
   * @param farm the book as known by the evening
   * @throws IOException if the history cannot be read
   */
  static EveningLooks of(Measures measures, List<PhotoMeasure> photos, Farm farm)
      throws IOException {
    return new EveningLooks(measures, StationDoubts.of(measures, farm), photos, farm);
  }

  /** Returns everything that the photos said. */
  Seen seen() {
    return seen;
  }

  /** Returns everything measured, as corrected. */
  public Measures measures() {
    return measures;
  }

  /** Returns the book as known by the evening. */
  public CropBook book() {
    return farm.book();
  }

  /**
   * Returns what the photos of some evenings said.
   *
   * @param evenings the last of them is the one that is closed
   * @return looks in a stable order
   * @throws IOException if the history cannot be read
   */
  public List<SiteLook> between(BookLooks.Evenings evenings) throws IOException {
    if (measures.correctedBy(evenings.correctedBy()) != measures) {
      return BookLooks.between(measures, farm.book(), evenings);
    }
    List<PhotoMeasure> asked = BookLooks.photos(measures, farm, evenings);
    return same(asked) ? seen.sites() : CollectSeen.of(asked, doubts, farm).sites();
  }

  /** Says whether these are the very photos that were settled; to compare what they say is dear. */
  @SuppressWarnings("ReferenceEquality")
  private boolean same(List<PhotoMeasure> others) {
    boolean same = others.size() == photos.size();
    for (int i = 0; same && i < photos.size(); i++) {
      same = others.get(i) == photos.get(i);
    }
    return same;
  }
}
