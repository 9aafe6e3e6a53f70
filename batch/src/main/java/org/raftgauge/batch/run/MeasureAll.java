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

/**
 * Measures photos on several workers and hands the outcomes on in the order of the photos, so that
 * the number of workers changes nothing but the time. At most twice as many photos as workers are
 * under way or waiting to be handed on.
 */
final class MeasureAll {

  private MeasureAll() {}

  /**
   * Measures.
   *
   * @param photos in the order of the outcomes
   * @param workers 1 or more
   * @param one measures a photo
   * @param sink takes each outcome, on the calling thread
   * @throws IOException from the sink, or if the thread is interrupted
   */
  static void measure(List<FoundPhoto> photos, int workers, MeasureOne one, Sink sink)
      throws IOException {
    ExecutorService pool = Executors.newFixedThreadPool(workers, MeasureAll::worker);
    try {
      Deque<Future<Measured>> ahead = new ArrayDeque<>();
      Iterator<FoundPhoto> next = photos.iterator();
      while (next.hasNext() || !ahead.isEmpty()) {
        while (next.hasNext() && ahead.size() < 2 * workers) {
          FoundPhoto photo = next.next();
          ahead.add(pool.submit(() -> one.measure(photo)));
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
    }
  }

  private static Thread worker(Runnable work) {
    Thread thread = new Thread(work, "measure");
    thread.setDaemon(true);
    return thread;
  }

  /** Takes outcomes. */
  interface Sink {
    void take(Measured measured) throws IOException;
  }
}
