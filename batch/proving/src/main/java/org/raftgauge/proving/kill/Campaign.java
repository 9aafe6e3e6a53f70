// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.raftgauge.batch.run.ProgramVersion;

/**
 * The whole campaign; what was done is kept in {@code cases.csv}, so that it can be done in parts.
 */
public final class Campaign {
  private static final String CASES = "cases.csv";

  private final Asked asked;
  private final Path folder;
  private final Path file;
  private final List<CaseRow> done = new ArrayList<>();

  /**
   * What is asked for.
   *
   * @param work folder; one of an earlier call goes on where that ended
   * @param kills number of kills
   * @param seed of photos and kills
   * @param minutes stops after so many; call again to go on
   * @param stamp what is tested, such as the commit
   */
  public record Asked(Path work, int kills, long seed, double minutes, String stamp) {}

  /**
   * What came of it.
   *
   * @param text the page in Markdown
   * @param whole whether all is done
   */
  public record Page(String text, boolean whole) {}

  /** Returns the number of cases that are asked for. */
  static int cases(Asked asked) {
    return asked.kills() + FullDisks.cases() + Meetings.cases();
  }

  private Campaign(Asked asked) {
    this.asked = asked;
    // Cases of another build say nothing of this one, and its measures carry another code.
    String build = ProgramVersion.current().measuringCode().substring(0, 12);
    this.folder = asked.work().resolve(build);
    this.file = folder.resolve(CASES);
  }

  /**
   * Does what is not done yet.
   *
   * @param asked what is asked for
   * @param progress told each case
   * @return the page of what is done so far
   * @throws IOException if the campaign itself fails
   * @throws InterruptedException if it is stopped
   */
  public static Page run(Asked asked, Consumer<String> progress)
      throws IOException, InterruptedException {
    return new Campaign(asked).run(progress);
  }

  private Page run(Consumer<String> progress) throws IOException, InterruptedException {
    long end = System.nanoTime() + (long) (asked.minutes() * 60e9);
    Bench bench = Bench.make(folder, asked.seed());
    read();
    Kills kills = new Kills(bench, asked.seed());
    FullDisks disks = new FullDisks(bench);
    Meetings meetings = new Meetings(bench);
    boolean all =
        each("KILL", asked.kills(), end, kills::kill, progress)
            && each("DISK", FullDisks.cases(), end, disks::fill, progress)
            && each("LOCK", Meetings.cases(), end, meetings::meet, progress);
    return new Page(FaultsPage.of(asked, done), all);
  }

  /** Does the cases of a family; false where time ran out. */
  private boolean each(String family, int cases, long end, Case work, Consumer<String> progress)
      throws IOException, InterruptedException {
    Set<Integer> known = new HashSet<>();
    done.stream().filter(r -> family(r).equals(family)).forEach(r -> known.add(r.number()));
    for (int number = 0; number < cases; number++) {
      if (!known.contains(number)) {
        if (System.nanoTime() > end) {
          return false;
        }
        CaseRow row = work.of(number);
        done.add(row);
        Files.writeString(file, row.line() + "\n", StandardOpenOption.APPEND);
        progress.accept(family + " " + row.line());
      }
    }
    return true;
  }

  private static String family(CaseRow row) {
    return row.kind().equals("DISK") || row.kind().equals("LOCK") ? row.kind() : "KILL";
  }

  private void read() throws IOException {
    if (!Files.exists(file)) {
      Files.writeString(file, CaseRow.HEADER + "\n");
    }
    Files.readAllLines(file).stream().skip(1).map(CaseRow::parse).forEach(done::add);
  }

  private interface Case {
    CaseRow of(int number) throws IOException, InterruptedException;
  }
}
