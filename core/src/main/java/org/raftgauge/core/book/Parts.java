// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** The stations, layouts and crops of a book, and what of them cannot be used. */
record Parts(
    Map<String, List<Layout>> layouts,
    Map<String, Crop> crops,
    Map<String, Station> stations,
    Broken broken) {

  /** Returns the names of all layouts, those too that cannot be used. */
  Known layoutNames() {
    return names("layout", layouts.keySet());
  }

  /** Returns the names of all crops, those too that cannot be used. */
  Known cropNames() {
    List<String> sound = crops.keySet().stream().filter(name -> !name.contains("/")).toList();
    return names("crop", new LinkedHashSet<>(sound));
  }

  /** Returns the varieties that a crop lists, those too that cannot be used. */
  List<String> varieties(String crop) {
    String start = crop + "/";
    return Stream.concat(
            crops.keySet().stream().filter(key -> key.startsWith(start)),
            broken.parts("crop").filter(key -> key.startsWith(start)))
        .map(key -> key.substring(start.length()))
        .distinct()
        .sorted()
        .toList();
  }

  /** Returns the names of all stations, those too that cannot be used. */
  Known stationNames() {
    return names("station", stations.keySet());
  }

  private Known names(String kind, Set<String> sound) {
    Set<String> names = new LinkedHashSet<>(sound);
    names.addAll(broken.names(kind));
    return new Known(names.stream().sorted().toList(), !broken.isUnread(kind));
  }
}
