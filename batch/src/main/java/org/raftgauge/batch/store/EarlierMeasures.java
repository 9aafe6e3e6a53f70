// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.Connection;
import java.sql.SQLException;

/** Measures that gave way to those of another program or book. */
final class EarlierMeasures {
  private static final String PHOTO =
      "INSERT INTO earlier_photos SELECT NULL, p.* FROM photos p WHERE sha256 = ? AND settings <> ?";

  private EarlierMeasures() {}

  /** Keeps what is there of a photo's bytes, where other settings made it. */
  static void keep(Connection database, Kept fresh) throws SQLException {
    String sha256 = fresh.measure().sha256();
    if (Database.update(database, PHOTO, sha256, fresh.origin().settings()) == 1) {
      for (String table : new String[] {"rafts", "sites"}) {
        Database.update(
            database,
            "INSERT INTO earlier_"
                + table
                + " SELECT (SELECT max(measure) FROM earlier_photos), t.* FROM "
                + table
                + " t WHERE sha256 = ? ORDER BY rowid",
            sha256);
      }
    }
  }
}
