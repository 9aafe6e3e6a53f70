// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.OptionalDouble;

/** Fills the places of a prepared statement one after the other. */
final class SqlRow {
  private final PreparedStatement statement;
  private int place;

  SqlRow(PreparedStatement statement) {
    this.statement = statement;
  }

  SqlRow text(String value) throws SQLException {
    statement.setString(++place, value);
    return this;
  }

  SqlRow number(double value) throws SQLException {
    statement.setDouble(++place, value);
    return this;
  }

  SqlRow number(OptionalDouble value) throws SQLException {
    if (value.isPresent()) {
      return number(value.getAsDouble());
    }
    statement.setNull(++place, Types.REAL);
    return this;
  }

  SqlRow whole(int value) throws SQLException {
    statement.setInt(++place, value);
    return this;
  }

  SqlRow flag(boolean value) throws SQLException {
    return whole(value ? 1 : 0);
  }

  /** Runs the statement and makes the row ready for the next values. */
  void write() throws SQLException {
    statement.executeUpdate();
    place = 0;
  }
}
