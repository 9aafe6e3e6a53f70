// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.batch.store.History;

/**
 * What every case starts from and must come to: 60 photos, a book that knows none of them, one that
 * has run over all but the last three evenings, and the state after a run that nothing disturbed.
 */
final class Bench {
  private final Path work;
  private RunState should;

  private Bench(Path work) {
    this.work = work;
  }

  /**
   * Makes the bench, or takes what is there of an earlier call.
   *
   * @param work folder
   * @param seed of the photos
   */
  static Bench make(Path work, long seed) throws IOException {
    Bench bench = new Bench(work);
    if (!Files.exists(bench.undisturbed().out())) {
      Files.createDirectories(work);
      for (Path each : List.of(bench.photos(), bench.empty().folder(), bench.most().folder())) {
        new Place(each).clear();
      }
      SmallPond.write(bench.empty().book(), bench.photos(), seed);
      bench.most().copyOf(bench.empty());
      Path early = work.resolve("early-photos");
      Place.copy(bench.photos(), early);
      dropNewEvenings(early);
      check(plain(bench.most(), early));
      Place done = new Place(work.resolve("undisturbed-draft"));
      done.copyOf(bench.most());
      check(plain(done, bench.photos()));
      Files.move(done.folder(), bench.undisturbed().folder());
    }
    bench.archiveClasses();
    bench.should = RunState.of(bench.undisturbed(), work.resolve("export"));
    return bench;
  }

  private static void dropNewEvenings(Path photos) throws IOException {
    String manifest = Files.readString(photos.resolve("manifest.csv"));
    for (int back = 1; back <= SmallPond.NEW_EVENINGS; back++) {
      String day = SmallPond.FIRST.plusDays(SmallPond.EVENINGS - back).toString();
      new Place(photos.resolve(day)).clear();
      manifest =
          String.join("\n", manifest.lines().filter(l -> !l.startsWith(day)).toList()) + "\n";
    }
    Files.writeString(photos.resolve("manifest.csv"), manifest);
  }

  /** Lets a child end by itself, which writes the archive that makes others start quicker. */
  private void archiveClasses() throws IOException {
    if (Child.archives() && !Files.exists(Child.archive(this))) {
      trial().copyOf(most());
      try {
        Child.start(this, trial(), KilledProgram.NOWHERE).end();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException("stopped", e);
      }
    }
  }

  Path photos() {
    return work.resolve("photos");
  }

  /** A book without a history. */
  Place empty() {
    return new Place(work.resolve("empty"));
  }

  /** A book that knows 54 of the photos, with results of them. */
  Place most() {
    return new Place(work.resolve("most"));
  }

  private Place undisturbed() {
    return new Place(work.resolve("undisturbed"));
  }

  /** Where the case at hand is tried. */
  Place trial() {
    return new Place(work.resolve("trial"));
  }

  Path work() {
    return work;
  }

  /**
   * What a run said.
   *
   * @param code its exit code
   * @param text what it said
   */
  record Said(int code, String text) {}

  /** Runs the program in this process, undisturbed. */
  static Said plain(Place place, Path photos, String... more) {
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    PrintStream to = new PrintStream(text, true, StandardCharsets.UTF_8);
    List<String> call = Stream.concat(place.call(photos).stream(), Stream.of(more)).toList();
    int code =
        Raftgauge.run(call.toArray(String[]::new), new BookWorkplace(), new Console(to, to, false));
    return new Said(code, text.toString(StandardCharsets.UTF_8));
  }

  private static void check(Said said) throws IOException {
    if (said.code() != 0) {
      throw new IOException("a run that nothing disturbs failed: " + said.text());
    }
  }

  /** Runs the program plainly over a disturbed book and looks at what came of it. */
  Outcome mend(Place place) throws IOException {
    Said said = plain(place, photos());
    if (said.code() != 0) {
      return Outcome.failed("the plain run failed: " + said.text().strip());
    }
    return compare(place);
  }

  /** Looks at a book after a run that was not disturbed. */
  Outcome compare(Place place) throws IOException {
    List<String> damage;
    try (History history = History.open(place.history())) {
      damage = history.check().damage();
    }
    if (!damage.isEmpty()) {
      return Outcome.failed("the history is damaged: " + damage.get(0));
    }
    if (!RunState.whole(place.out())) {
      return Outcome.failed("the results are not whole");
    }
    String left = left(place);
    if (!left.isEmpty()) {
      return Outcome.failed("left behind: " + left);
    }
    RunState.Difference difference = RunState.of(place, work.resolve("export")).from(should);
    return new Outcome(difference.lost(), difference.doubled(), difference.corrupt(), "");
  }

  /** Names what a disturbed run left behind that the plain run should have cleared away. */
  private static String left(Place place) throws IOException {
    try (Stream<Path> walk = Files.walk(place.folder(), 3)) {
      return walk.map(p -> place.folder().relativize(p).toString())
          .filter(n -> n.matches("(.*/)?\\.(part|earlier|importing)-.*|.*-journal"))
          .findFirst()
          .orElse("");
    }
  }
}
