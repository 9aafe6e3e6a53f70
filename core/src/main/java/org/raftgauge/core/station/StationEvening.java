// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.raftgauge.core.plane.EdgeBlur;

/**
 * What a station's photos of one evening say of the station itself: medians over its photos.
 *
 * @param evening the evening
 * @param values by sign, in its unit; what was not seen is left out, and {@link
 *     StationSign#FOULING}, which only the past tells
 * @param blurCells blur of edges in {@link EdgeBlur#CELLS} times {@code CELLS} parts of the
 *     picture, row by row, px; empty where none was seen
 */
public record StationEvening(
    LocalDate evening, Map<StationSign, Double> values, List<OptionalDouble> blurCells) {

  /** Copies map and list. */
  public StationEvening {
    int cells = EdgeBlur.CELLS * EdgeBlur.CELLS;
    if (!blurCells.isEmpty() && blurCells.size() != cells) {
      throw new IllegalArgumentException(
          "blurCells must be none or " + cells + ", got " + blurCells.size());
    }
    EnumMap<StationSign, Double> copy = new EnumMap<>(StationSign.class);
    copy.putAll(values);
    values = copy;
    blurCells = List.copyOf(blurCells);
  }

  /** Returns the value of a sign, where it was seen. */
  OptionalDouble value(StationSign sign) {
    Double value = values.get(sign);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** Returns the same evening with one more value. */
  StationEvening with(StationSign sign, double value) {
    EnumMap<StationSign, Double> more = new EnumMap<>(StationSign.class);
    more.putAll(values);
    more.put(sign, value);
    return new StationEvening(evening, more, blurCells);
  }

  @Override
  public Map<StationSign, Double> values() {
    return java.util.Collections.unmodifiableMap(values);
  }
}
