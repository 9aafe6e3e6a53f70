// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.Problem;

/** Remembers which parts of the book cannot be used, and why. */
final class Broken {
  private final Findings findings;
  private final Map<String, Problem> first = new LinkedHashMap<>();
  private final Set<String> unread = new HashSet<>();

  Broken(Findings findings) {
    this.findings = findings;
  }

  /** Reads a part and, where nothing came of it, keeps the first error that was found in it. */
  <T> Optional<T> watch(String part, Supplier<Optional<T>> reader) {
    int before = findings.list().size();
    Optional<T> read = reader.get();
    List<Problem> after = findings.list();
    if (read.isEmpty()) {
      after.subList(before, after.size()).stream()
          .filter(Problem::isError)
          .findFirst()
          .ifPresent(problem -> first.put(part, problem));
    }
    return read;
  }

  /** Keeps an error of a part that is named where the book does not describe it. */
  void keep(String part, Problem problem) {
    first.putIfAbsent(part, problem);
  }

  /** Takes note that not even the names of a kind could be read. */
  void lose(String kind) {
    unread.add(kind);
  }

  boolean isUnread(String kind) {
    return unread.contains(kind);
  }

  Map<String, Problem> byPart() {
    return first;
  }

  /** Returns the names of a kind's broken parts. */
  List<String> names(String kind) {
    return parts(kind).filter(name -> !name.contains("/")).toList();
  }

  /** Returns the same with what is named below them, such as {@code lettuce/red oak}. */
  Stream<String> parts(String kind) {
    return first.keySet().stream()
        .filter(part -> part.startsWith(kind + " "))
        .map(part -> part.substring(kind.length() + 1));
  }
}
