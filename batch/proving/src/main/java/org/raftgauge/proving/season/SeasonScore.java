// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** What a season came to. */
final class SeasonScore {
  final Map<Fate.Kind, Integer> small = new EnumMap<>(Fate.Kind.class);
  final Map<Fate.Kind, Integer> smallCalled = new EnumMap<>(Fate.Kind.class);
  final List<String> missed = new ArrayList<>();
  final Map<String, Integer> falseWhere = new TreeMap<>();
  final Map<LocalDate, Set<String>> groups = new TreeMap<>();
  int smallClosed;
  int healthyDays;
  int falseFlags;
  int stalls;
  int stallsCalled;
}
