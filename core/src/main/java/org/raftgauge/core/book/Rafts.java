// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The rafts and ponds that plantings and events name. Rafts of a row that could not be read are in
 * doubt: the row is a problem already, and what does not fit because of it is none of its own.
 */
final class Rafts {
  private final Set<String> rafts = new TreeSet<>();
  private final Set<String> ponds = new TreeSet<>();
  private final Set<String> doubtful = new HashSet<>();
  private boolean whole = true;

  /** Takes note of rows that could not even be told into cells. */
  void lose() {
    whole = false;
  }

  /** Takes the rafts that a row names; they are in doubt where the row cannot be used. */
  void name(Collection<String> named, boolean sound) {
    rafts.addAll(named);
    if (!sound) {
      doubt(named);
    }
    if (!named.stream().allMatch(Names::isName)) {
      lose();
    }
  }

  void doubt(Collection<String> named) {
    doubtful.addAll(named);
  }

  void pond(String name) {
    if (!name.isEmpty()) {
      ponds.add(name);
    }
  }

  /** Says whether what is known of a raft may be wrong for want of a row. */
  boolean isDoubtful(String raft) {
    return !whole || doubtful.contains(raft);
  }

  Known known() {
    return new Known(List.copyOf(rafts), whole);
  }

  Known knownPonds() {
    return new Known(List.copyOf(ponds), whole);
  }
}
