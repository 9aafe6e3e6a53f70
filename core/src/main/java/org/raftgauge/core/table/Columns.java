// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.util.ArrayList;
import java.util.List;

/**
 * Names the columns that a file may have.
 *
 * @param required columns without which no row can be read
 * @param optional columns that may be left out
 */
public record Columns(List<String> required, List<String> optional) {

  /** Copies the lists. */
  public Columns {
    required = List.copyOf(required);
    optional = List.copyOf(optional);
  }

  /** Returns all names, the required ones first. */
  public List<String> all() {
    List<String> names = new ArrayList<>(required);
    names.addAll(optional);
    return List.copyOf(names);
  }
}
