// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.stream.Stream;
import org.raftgauge.batch.store.Step;
import org.raftgauge.batch.store.Steps;

/**
 * A run folder under construction: a hidden folder beside its place, renamed to its place in one
 * step when all is there, and removed when anything stops the run. What a killed run left beside
 * the place is cleared away by the next.
 */
final class RunDraft implements AutoCloseable {
  private static final String DRAFT = ".part-";
  private static final String EARLIER = ".earlier-";

  private final Path parent;
  private final Path folder;
  private final ReentrantReadWriteLock lock = new ReentrantReadWriteLock();
  private boolean open = true;

  private RunDraft(Path parent, Path folder) {
    this.parent = parent;
    this.folder = folder;
  }

  /**
   * Starts a draft.
   *
   * @param parent the folder in which the run will be published; made where absent
   * @return the draft, empty
   * @throws IOException if the parent cannot be written
   */
  static RunDraft start(Path parent) throws IOException {
    Files.createDirectories(parent);
    clear(parent);
    Path folder = parent.resolve(DRAFT + ProcessHandle.current().pid());
    Files.createDirectory(folder);
    return new RunDraft(parent, folder);
  }

  /**
   * Writes into the folder, unless the draft is closed; several threads may.
   *
   * @param work gets the folder
   * @return what the work returns
   * @throws IOException from the work, or if the draft is closed
   */
  boolean write(Work work) throws IOException {
    lock.readLock().lock();
    try {
      if (!open) {
        throw new IOException("the run was stopped");
      }
      return work.in(folder);
    } finally {
      lock.readLock().unlock();
    }
  }

  /** Returns the files of the draft, relative, sorted. */
  List<Path> files() throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile).map(folder::relativize).sorted().toList();
    }
  }

  /** Forces all that was written to the disk. */
  void sync(Steps steps) throws IOException {
    write(
        to -> {
          SyncFolder.all(to, steps);
          return true;
        });
  }

  /**
   * Puts the folder in its place.
   *
   * @param out the place, in the parent
   * @return what is left to say
   * @throws IOException if it cannot, or something else is there
   */
  Optional<String> publish(Path out) throws IOException {
    return publish(out, Steps.NONE);
  }

  /**
   * Puts the folder in its place. An empty folder or an earlier run there gives way: it is renamed
   * aside first, put back if the second rename fails, and removed at the end.
   *
   * @param out the place, in the parent
   * @param steps told before each change
   * @return what is left to say: where an earlier run lies that cannot be removed
   * @throws IOException if it cannot, or something else is there
   */
  Optional<String> publish(Path out, Steps steps) throws IOException {
    lock.writeLock().lock();
    try {
      Optional<Path> foreign = OutFolder.foreign(out);
      if (!open || foreign.isPresent()) {
        throw new IOException(
            open ? out + " now holds \"" + foreign.get() + "\"" : "the run was stopped");
      }
      Path aside =
          parent.resolve(EARLIER + ProcessHandle.current().pid() + "-" + out.getFileName());
      boolean earlier = Files.exists(out);
      if (earlier) {
        steps.before(Step.MOVE_EARLIER_ASIDE);
        Files.move(out, aside, StandardCopyOption.ATOMIC_MOVE);
      }
      try {
        steps.before(Step.MOVE_INTO_PLACE);
        Files.move(folder, out, StandardCopyOption.ATOMIC_MOVE);
        open = false;
      } catch (IOException e) {
        if (earlier) {
          Files.move(aside, out, StandardCopyOption.ATOMIC_MOVE);
        }
        throw e;
      }
      SyncFolder.entries(parent, steps);
      if (!earlier) {
        return Optional.empty();
      }
      steps.before(Step.REMOVE_EARLIER);
      return removed(aside)
          ? Optional.empty()
          : Optional.of("the results before could not be removed; they lie in " + aside);
    } finally {
      lock.writeLock().unlock();
    }
  }

  /** Removes the folder unless it is published. */
  @Override
  public void close() throws IOException {
    lock.writeLock().lock();
    try {
      if (open) {
        open = false;
        delete(folder);
      }
    } finally {
      lock.writeLock().unlock();
    }
  }

  /** Clears what killed runs left: removes drafts, puts an earlier run back whose place is free. */
  private static void clear(Path parent) throws IOException {
    List<Path> left;
    try (Stream<Path> list = Files.list(parent)) {
      left = list.filter(p -> stale(p.getFileName().toString())).sorted().toList();
    }
    for (Path path : left) {
      String name = path.getFileName().toString();
      Path place = parent.resolve(name.substring(name.indexOf('-', EARLIER.length()) + 1));
      if (name.startsWith(EARLIER) && !Files.exists(place)) {
        Files.move(path, place, StandardCopyOption.ATOMIC_MOVE);
      } else {
        removed(path);
      }
    }
  }

  /** Removes as much of a folder as may be removed; says whether it is gone. */
  private static boolean removed(Path folder) {
    try {
      delete(folder);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean stale(String name) {
    if (!name.matches("\\.part-\\d{1,18}|\\.earlier-\\d{1,18}-.+")) {
      return false;
    }
    long pid = Long.parseLong(name.replaceFirst("^\\.\\w+-(\\d+).*$", "$1"));
    return pid == ProcessHandle.current().pid() || ProcessHandle.of(pid).isEmpty();
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> paths;
    try (Stream<Path> walk = Files.walk(folder)) {
      paths = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : paths) {
      Files.deleteIfExists(path);
    }
  }

  /** Writes into a folder. */
  interface Work {
    boolean in(Path folder) throws IOException;
  }
}
