// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/**
 * Measures photos on several workers and hands the outcomes on in the order of the photos, so that
 * the number of workers changes nothing but the time. At most twice as many photos as workers are
 * under way or waiting to be handed on; threads of their own read them ahead, so that no worker
 * waits for a card or a network drive.
 */
final class MeasureAll {

  private MeasureAll() {}

  /**
   * Measures.
   *
   * @param photos in the order of the outcomes
   * @param workers 1 or more
   * @param read reads a photo
   * @param sink takes each outcome, on the calling thread
   * @throws IOException from the sink, or if the thread is interrupted
   */
  static void measure(List<FoundPhoto> photos, int workers, Read read, Sink sink)
      throws IOException {
    ExecutorService pool = pool(workers, "measure");
    ExecutorService readers = pool(workers, "read");
    try {
      Deque<Future<Measured>> ahead = new ArrayDeque<>();
      Iterator<FoundPhoto> next = photos.iterator();
      while (next.hasNext() || !ahead.isEmpty()) {
        while (next.hasNext() && ahead.size() < 2 * workers) {
          FoundPhoto photo = next.next();
          Future<Supplier<Measured>> bytes = readers.submit(() -> read.photo(photo));
          ahead.add(pool.submit(() -> bytes.get().get()));
        }
        sink.take(ahead.remove().get());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a worker failed outside its photo", e.getCause());
    } finally {
      pool.shutdownNow();
      readers.shutdownNow();
    }
  }

  private static ExecutorService pool(int threads, String name) {
    return Executors.newFixedThreadPool(
        threads,
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  /** Reads a photo from its drive and says what is left to do, which is to measure it. */
  interface Read {
    Supplier<Measured> photo(FoundPhoto photo);
  }

  /** Takes outcomes. */
  interface Sink {
    void take(Measured measured) throws IOException;
  }
}
