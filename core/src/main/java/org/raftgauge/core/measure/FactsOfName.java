// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.text.Normalizer;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.book.Slot;
import org.raftgauge.core.book.Tenure;

/**
 * Reads a photo's file name by the book's pattern. Capitals do not matter in it, nor whether an
 * accent is a character of its own, as some systems write file names: its raft, station and slot
 * are the book's, as the book writes them, where there is one such.
 */
final class FactsOfName {

  private FactsOfName() {}

  static PhotoName of(CropBook book, String photo) {
    String file = photo.substring(photo.lastIndexOf('/') + 1);
    PhotoName name =
        book.photoNamePattern()
            .map(p -> p.parse(withoutMark(book, file)))
            .orElse(PhotoName.silent());
    return new PhotoName(
        name.date(),
        name.time(),
        name.raft().map(raft -> asWritten(raft, rafts(book))),
        name.station().map(station -> asWritten(station, book.stations().keySet())),
        name.slot().map(slot -> asWritten(slot, slots(book))),
        name.impossible());
  }

  /** Says whether a name tells a raft or a station that the book knows. */
  static boolean tellsPlace(CropBook book, String photo) {
    PhotoName name = of(book, photo);
    return name.station().filter(book.stations()::containsKey).isPresent()
        || name.raft().filter(rafts(book)::contains).isPresent();
  }

  /** Takes the mark of a first camera of two out of a file's name: it is no part of the raft. */
  private static String withoutMark(CropBook book, String file) {
    return book.stations().values().stream()
        .flatMap(station -> station.second().stream())
        .map(SecondCamera::firstFileMark)
        .filter(mark -> !mark.isEmpty() && file.contains(mark))
        .findFirst()
        .map(mark -> file.replace(mark, ""))
        .orElse(file);
  }

  /** Returns every raft that the book names. */
  static List<String> rafts(CropBook book) {
    return Stream.concat(
            book.plantings().stream().map(Planting::raft),
            book.tenures().stream().map(Tenure::raft))
        .distinct()
        .toList();
  }

  private static List<String> slots(CropBook book) {
    return book.stations().values().stream()
        .flatMap(station -> station.slots().stream().map(Slot::name))
        .distinct()
        .toList();
  }

  private static String asWritten(String found, Collection<String> known) {
    if (known.contains(found)) {
      return found;
    }
    String wanted = composed(found);
    List<String> alike =
        known.stream().filter(name -> composed(name).equalsIgnoreCase(wanted)).toList();
    return alike.size() == 1 ? alike.get(0) : found;
  }

  private static String composed(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC);
  }
}
