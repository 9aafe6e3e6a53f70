// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.NavigableSet;

/** Says where a run is published: as asked for, else by its evenings in the book's runs. */
final class RunPlace {

  private RunPlace() {}

  static Path parent(RunRequest request) {
    return request
        .out()
        .map(out -> out.toAbsolutePath().normalize().getParent())
        .orElse(request.book().resolve("runs"));
  }

  /** Returns the place; where none is asked for, one of a free name. */
  static Path of(RunRequest request, NavigableSet<LocalDate> evenings) {
    if (request.out().isPresent()) {
      return request.out().get().toAbsolutePath().normalize();
    }
    String name =
        evenings.isEmpty()
            ? request.startedAt().toLocalDateTime().withNano(0).toString().replace(":", "")
            : evenings.first() + (evenings.size() == 1 ? "" : "_to_" + evenings.last());
    Path place = parent(request).resolve(name);
    for (int n = 2; Files.exists(place); n++) {
      place = parent(request).resolve(name + "-" + n);
    }
    return place;
  }
}
