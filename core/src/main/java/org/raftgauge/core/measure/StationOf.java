// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.Station;

/**
 * Tells at which station a photo was taken: the manifest's word, else its file name, its folder,
 * the book's default.
 */
final class StationOf {

  private StationOf() {}

  record Answer(Optional<Station> station, String reason, String remedy) {}

  static Answer photo(CropBook book, PhotoFacts facts, PhotoName name) {
    Optional<String> said = facts.station().or(name::station).or(() -> folder(book, facts.photo()));
    Optional<String> station = said.or(book::defaultStation).or(() -> onlyOne(book));
    if (station.isEmpty()) {
      return new Answer(
          Optional.empty(),
          "nothing tells at which station it was taken",
          "name it in manifest.csv, the file's name or folder, or set station in book.yaml");
    }
    Optional<Station> found = book.station(station.get());
    if (found.isEmpty()) {
      String known = String.join(", ", book.stations().keySet());
      return new Answer(
          Optional.empty(),
          "the book has no usable station \"" + station.get() + "\"",
          known.isEmpty() ? "add it to the book's stations folder" : "use one of " + known);
    }
    return new Answer(found, "", "");
  }

  private static Optional<String> folder(CropBook book, String photo) {
    List<String> folders = new ArrayList<>(List.of(photo.split("/")));
    folders.remove(folders.size() - 1);
    for (int i = folders.size() - 1; i >= 0; i--) {
      if (book.stations().containsKey(folders.get(i))) {
        return Optional.of(folders.get(i));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> onlyOne(CropBook book) {
    return book.stations().size() == 1
        ? book.stations().keySet().stream().findFirst()
        : Optional.empty();
  }
}
