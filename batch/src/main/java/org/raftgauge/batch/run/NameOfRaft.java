// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoNamePattern;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.CheckPhoto;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/** Guesses which raft was meant by a name that no planting of the book has. */
public final class NameOfRaft {
  private NameOfRaft() {}

  /**
   * Guesses which raft was meant.
   *
   * @param raft as a name, a tag or the manifest has it
   * @param book the crop book
   * @return the nearest name; empty where the raft is in plantings.csv, or none is near
   */
  static Optional<String> guess(String raft, CropBook book) {
    List<String> known = book.plantings().stream().map(Planting::raft).distinct().toList();
    return known.contains(raft) ? Optional.empty() : NearestSpelling.of(raft, known);
  }

  /** Says what to do about a raft without a planting that may be another, misspelt. */
  static String remedy(String meant) {
    return "add it to plantings.csv, or, if \""
        + meant
        + "\" is meant, mend the file's name, the tag or manifest.csv";
  }

  /** Says where a person may name the raft of a photo that nothing else tells. */
  static String where(CropBook book) {
    return book.photoNamePattern()
        .map(PhotoNamePattern::text)
        .filter(text -> text.contains("{raft}"))
        .map(text -> "name the file as " + text + ", or the raft in manifest.csv")
        .orElse("name it in the manifest");
  }

  /**
   * Says where a photo's file name seems to misspell a raft, and nothing else places the photo.
   *
   * @param photo the photo
   * @param book the crop book
   */
  public static Optional<Problem> misspelt(FoundPhoto photo, CropBook book) {
    return unplanted(photo, book)
        .flatMap(
            raft ->
                guess(raft, book)
                    .map(
                        name ->
                            new Problem(
                                photo.facts().photo(),
                                "no planting is on the raft \"" + raft + "\" of its name",
                                remedy(name))));
  }

  /**
   * Returns the raft of a photo's file name where no planting has it nor one nearly spelt so, and
   * nothing else places the photo: its tag may tell another.
   *
   * @param photo the photo
   * @param book the crop book
   */
  public static Optional<String> unknown(FoundPhoto photo, CropBook book) {
    return unplanted(photo, book).filter(raft -> guess(raft, book).isEmpty());
  }

  private static Optional<String> unplanted(FoundPhoto photo, CropBook book) {
    String path = photo.facts().photo();
    return CheckPhoto.isPlaced(photo.facts(), book)
        ? Optional.empty()
        : book.photoNamePattern()
            .flatMap(pattern -> pattern.parse(path.substring(path.lastIndexOf('/') + 1)).raft());
  }
}
