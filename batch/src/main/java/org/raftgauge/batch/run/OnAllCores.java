// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.function.Function;
import org.raftgauge.core.track.Spread;

/** Spreads work over the cores of this machine; results come in order, whatever their number. */
final class OnAllCores implements Spread {

  @Override
  public <T, R> List<R> map(List<T> all, Function<T, R> one) {
    return all.parallelStream().map(one).toList();
  }
}
