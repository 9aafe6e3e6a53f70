// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** Does two things that do not depend on each other at once, where the machine has the cores. */
final class AtOnce {

  private AtOnce() {}

  /** Something to do. */
  interface Work<T> {
    T done() throws IOException;
  }

  /**
   * What came of both.
   *
   * @param first of the first
   * @param second of the second
   */
  record Both<A, B>(A first, B second) {}

  /**
   * Does both.
   *
   * @return what came of them
   * @throws IOException if either fails; of both the second's failure
   */
  static <A, B> Both<A, B> of(Work<A> first, Work<B> second) throws IOException {
    CompletableFuture<A> elsewhere = CompletableFuture.supplyAsync(() -> unchecked(first));
    try {
      B here = second.done();
      return new Both<>(elsewhere.join(), here);
    } catch (CompletionException e) {
      if (e.getCause() instanceof UncheckedIOException failed) {
        throw failed.getCause();
      }
      if (e.getCause() instanceof RuntimeException failed) {
        throw failed;
      }
      throw e;
    } finally {
      elsewhere.exceptionally(failed -> null).join();
    }
  }

  private static <T> T unchecked(Work<T> work) {
    try {
      return work.done();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
