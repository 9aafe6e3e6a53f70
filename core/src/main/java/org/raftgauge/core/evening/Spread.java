// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.List;
import java.util.function.Function;

/**
 * Applies a pure function to many things. This library starts no threads; a caller that has several
 * cores hands in one that uses them.
 */
public interface Spread {

  /** One after the other, on the calling thread. */
  Spread IN_TURN =
      new Spread() {
        @Override
        public <T, R> List<R> map(List<T> all, Function<T, R> one) {
          return all.stream().map(one).toList();
        }
      };

  /**
   * Maps a list.
   *
   * @param all what to map
   * @param one the function, which depends on nothing but its argument
   * @return the results, in the order of the list
   * @param <T> what is mapped
   * @param <R> what comes of it
   */
  <T, R> List<R> map(List<T> all, Function<T, R> one);
}
