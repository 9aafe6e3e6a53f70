// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import org.raftgauge.core.book.PlantLife.Ending;

/** Words how a stay came to its end. */
final class Endings {
  private Endings() {}

  static String past(Ending ending) {
    return switch (ending) {
      case NONE -> "stands";
      case ENDED -> "its planting ended";
      case MOVED -> "it was moved";
      case REPLACED -> "it was replaced";
      case THINNED -> "it was thinned out";
      case WEIGHED -> "it was weighed";
      case HARVESTED -> "it was harvested";
      case DIED -> "it died";
    };
  }
}
