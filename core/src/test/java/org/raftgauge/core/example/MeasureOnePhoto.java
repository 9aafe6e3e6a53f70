// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.example;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** Measures one photo with the library and prints the leaf area of each site. */
public final class MeasureOnePhoto {

  private MeasureOnePhoto() {}

  /**
   * Measures.
   *
   * @param args the crop book's folder, the photo folder, the photo's path below it
   */
  public static void main(String[] args) throws IOException {
    BookReading reading = CropBook.read(Path.of(args[0]));
    reading.problems().forEach(System.err::println);
    byte[] bytes = Files.readAllBytes(Path.of(args[1], args[2]));
    PhotoFacts facts = PhotoFacts.of(args[2]);
    PhotoMeasure photo = MeasurePhoto.measure(bytes, facts, reading.book()).measure();
    if (photo.rafts().isEmpty()) {
      System.out.println(photo.status() + ": " + photo.reason() + "; " + photo.remedy());
    }
    for (RaftMeasure raft : photo.rafts()) {
      for (SiteMeasure site : raft.sites()) {
        String area =
            site.projectedAreaCm2().isPresent()
                ? Math.round(site.projectedAreaCm2().getAsDouble()) + " cm2"
                : "held: " + site.held();
        System.out.println(raft.raft().orElse("?") + " " + site.site() + " " + area);
      }
    }
  }
}
