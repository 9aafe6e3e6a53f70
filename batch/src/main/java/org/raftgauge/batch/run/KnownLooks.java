// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.forecast.LookBack;
import org.raftgauge.core.history.SiteLook;

/**
 * Tells what photos said as they were corrected by the end of earlier evenings. Read anew only
 * where other corrections hold.
 */
public final class KnownLooks implements LookBack.Known {
  private final List<Correction> entered;
  private final FarmDay farmDay;
  private final Source source;
  private final Map<List<Correction>, List<SiteLook>> known = new HashMap<>();

  /** Reads looks. */
  public interface Source {

    /**
     * Reads.
     *
     * @param correctedBy corrections that were entered at this moment or later are not looked at
     * @return looks in a stable order
     * @throws IOException if they cannot be read
     */
    List<SiteLook> by(Instant correctedBy) throws IOException;
  }

  /**
   * @param entered every correction, in the order of their numbers
   * @param farmDay the farm's clock
   * @param source reads looks
   */
  public KnownLooks(List<Correction> entered, FarmDay farmDay, Source source) {
    this.entered = List.copyOf(entered);
    this.farmDay = farmDay;
    this.source = source;
  }

  /**
   * Takes looks that were read already.
   *
   * @param correctedBy the moment by which they are corrected
   * @param looks what they said
   * @return itself
   */
  public KnownLooks with(Instant correctedBy, List<SiteLook> looks) {
    known.put(Corrections.of(entered, correctedBy).all(), looks);
    return this;
  }

  @Override
  public List<SiteLook> on(LocalDate evening) {
    Instant end = farmDay.start(evening.plusDays(1));
    return known.computeIfAbsent(Corrections.of(entered, end).all(), c -> read(end));
  }

  private List<SiteLook> read(Instant end) {
    try {
      return source.by(end);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
