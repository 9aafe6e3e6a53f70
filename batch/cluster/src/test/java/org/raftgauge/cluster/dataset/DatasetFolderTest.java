// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.dataset;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.hadoop.conf.Configuration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.InputException;

class DatasetFolderTest {
  private static final RunStamp STAMP = new RunStamp("r1", "2026-05-04T18:00Z", "1", "c1");

  @TempDir Path folder;

  private DatasetFolder open() throws InputException, IOException {
    return DatasetFolder.open(folder.toString(), new Configuration());
  }

  @Test
  void whatIsCommittedIsThereForTheNextReader() throws Exception {
    DatasetFolder dataset = open();
    assertEquals(Commit.NONE, dataset.commit());
    dataset.addRound(STAMP, "r1-0");
    assertThrows(
        InputException.class,
        () -> DatasetFolder.read(folder.toString(), new Configuration()),
        "no reports yet");
    dataset.publish(STAMP, new Commit.Reports(List.of("sites"), List.of()));
    Commit commit = DatasetFolder.read(folder.toString(), new Configuration()).commit();
    assertEquals(List.of(new Commit.Round("r1-0", "1", "c1")), commit.rounds());
    assertEquals("r1", commit.tables());
    assertEquals(1, commit.roundsOf("c1").size());
    assertEquals(0, commit.roundsOf("of another program").size());
  }

  @Test
  void whatAKilledRunLeftIsClearedAndWhatIsNamedStays() throws Exception {
    DatasetFolder dataset = open();
    Files.createDirectories(folder.resolve("measures/r1-0"));
    Files.createDirectories(folder.resolve("measures/killed-0"));
    Files.createDirectories(folder.resolve("tables/killed/sites"));
    dataset.addRound(STAMP, "r1-0");
    dataset.clear("r2");
    assertTrue(Files.exists(folder.resolve("measures/r1-0")));
    assertFalse(Files.exists(folder.resolve("measures/killed-0")));
    assertFalse(Files.exists(folder.resolve("tables/killed")));
  }

  @Test
  void theSlowerOfTwoRunsIsToldAndWritesNothing() throws Exception {
    DatasetFolder slow = open();
    open().addRound(STAMP, "r1-0");
    IOException told = assertThrows(IOException.class, () -> slow.addRound(STAMP, "slow-0"));
    assertTrue(told.getMessage().startsWith("another run has written to"), told.getMessage());
    assertEquals("r1-0", open().commit().rounds().get(0).folder());
  }

  @Test
  void aFolderOfOtherThingsIsRefused() throws Exception {
    Files.createFile(folder.resolve("holiday.txt"));
    assertEquals(
        "OUT "
            + folder
            + ": holds \"holiday.txt\" and is no dataset; give a new or empty folder,"
            + " or that of an earlier run",
        assertThrows(InputException.class, this::open).problems().get(0).toString());
  }
}
