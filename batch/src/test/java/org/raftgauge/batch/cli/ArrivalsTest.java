// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.run.FoundPhoto;
import org.raftgauge.core.measure.PhotoFacts;

class ArrivalsTest {
  @TempDir private Path folder;

  private final Arrivals arrivals = new Arrivals();
  private final List<FoundPhoto> found = new ArrayList<>();

  private void write(String name, String text, int second) throws IOException {
    Path file = folder.resolve(name);
    if (!Files.exists(file)) {
      found.add(new FoundPhoto(file, PhotoFacts.of(name)));
    }
    Files.writeString(file, text);
    Files.setLastModifiedTime(file, FileTime.fromMillis(1000L * second));
  }

  private List<String> look() {
    return arrivals.look(found).stream().map(photo -> photo.facts().photo()).toList();
  }

  @Test
  void aPhotoIsToldOnceItStandsStillAndOnlyOnce() throws IOException {
    write("a.jpg", "half", 1);
    assertEquals(List.of(), look(), "seen for the first time");
    write("a.jpg", "half and half", 2);
    assertEquals(List.of(), look(), "it has grown");
    assertEquals(List.of("a.jpg"), look());
    assertEquals(List.of(), look());
  }

  @Test
  void emptyFilesAndThoseThereFromTheBeginningAreNotTold() throws IOException {
    write("old.jpg", "x", 1);
    arrivals.begin(found);
    write("empty.jpg", "", 2);
    look();
    assertEquals(List.of(), look());
  }

  @Test
  void aPhotoTakenAgainUnderItsNameIsToldAgain() throws IOException {
    write("a.jpg", "x", 1);
    look();
    look();
    write("a.jpg", "y", 9);
    assertEquals(List.of(), look());
    assertEquals(List.of("a.jpg"), look());
  }

  @Test
  void severalComeInTheOrderInWhichTheyWereTaken() throws IOException {
    write("b.jpg", "x", 5);
    write("a.jpg", "x", 7);
    look();
    assertEquals(List.of("b.jpg", "a.jpg"), look());
  }

  @Test
  void aFileThatIsGoneIsForgotten() throws IOException {
    write("a.jpg", "x", 1);
    look();
    Files.delete(folder.resolve("a.jpg"));
    assertEquals(List.of(), look());
  }
}
