// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.function.Consumer;
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

  /**
   * Does something with each of a list.
   *
   * @param all with what
   * @param one what is done; nothing that it touches is touched by what is done with another
   * @param <T> with what it is done
   */
  default <T> void each(List<T> all, Consumer<T> one) {
    map(
        all,
        each -> {
          one.accept(each);
          return each;
        });
  }
}
