// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.table.CsvTable;

/**
 * The rafts and ponds that plantings and events name. Rafts of a row that could not be read are in
 * doubt: the row is a problem already, and what does not fit because of it is none of its own.
 */
final class Rafts {
  private final Set<String> rafts = new TreeSet<>();
  private final Set<String> ponds = new TreeSet<>();
  private final Set<String> doubtful = new HashSet<>();
  private final List<String> stray = new ArrayList<>();
  private boolean whole = true;

  /** Takes note of a file's rows that could not even be told into cells. */
  void miss(CsvTable table) {
    stray.addAll(table.stray());
    whole &= table.whole();
  }

  /** Takes the rafts that a row names; they are in doubt where the row cannot be used. */
  void name(Collection<String> named, boolean sound) {
    rafts.addAll(named);
    if (!sound) {
      doubt(named);
    }
    if (!named.stream().allMatch(Names::isName)) {
      whole = false;
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
    return !whole || doubtful.contains(raft) || stray.stream().anyMatch(row -> row.contains(raft));
  }

  Known known() {
    return new Known(List.copyOf(rafts), whole && stray.isEmpty());
  }

  Known knownPonds() {
    return new Known(List.copyOf(ponds), whole && stray.isEmpty());
  }
}
