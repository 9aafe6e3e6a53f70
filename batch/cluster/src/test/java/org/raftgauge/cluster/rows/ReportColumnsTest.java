// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReportColumnsTest {
  private static final DataType AREA =
      ReportColumns.schema("sites", List.of("projected_area_cm2")).apply(0).dataType();

  @ParameterizedTest
  @ValueSource(strings = {"", "0.00", "12.50", "-3.07", "123456.10"})
  void aNumberComesBackInItsDigits(String text) {
    assertEquals(text, ReportColumns.text(ReportColumns.typed(text, AREA)));
  }

  @Test
  void otherDigitsAreNotRoundedUnsaid() {
    assertEquals(
        "\"1.5\" must have 2 digits after the dot",
        assertThrows(IllegalArgumentException.class, () -> ReportColumns.typed("1.5", AREA))
            .getMessage());
  }

  @Test
  void aColumnThatIsNotKnownIsText() {
    assertEquals(
        DataTypes.StringType,
        ReportColumns.schema("sites", List.of("some_new_column")).apply(0).dataType());
  }

  @Test
  void quotedCellsAreReadAsTheyWere() {
    ReportColumns.Cells cells = ReportColumns.cells("a,b\r\n\"x, \"\"y\"\"\",\r\n");
    assertEquals(List.of("a", "b"), cells.header());
    assertEquals(List.of(List.of("x, \"y\"", "")), cells.rows());
  }
}
