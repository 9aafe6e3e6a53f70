// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.rows;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import scala.collection.Seq;
import scala.jdk.javaapi.CollectionConverters;

/**
 * How a value of some type stands in a row.
 *
 * @param type of the cell
 * @param optional whether the cell may be empty
 * @param out from value to cell
 * @param in from cell to value
 */
record ValueKind(
    DataType type, boolean optional, Function<Object, Object> out, Function<Object, Object> in) {

  /** Cells that are the value itself. */
  private static final Map<Class<?>, DataType> SAME =
      Map.of(
          String.class, DataTypes.StringType,
          double.class, DataTypes.DoubleType,
          Double.class, DataTypes.DoubleType,
          int.class, DataTypes.IntegerType,
          long.class, DataTypes.LongType,
          boolean.class, DataTypes.BooleanType);

  /** Values that stand as the text that they print and are read from. */
  private static final Map<Class<?>, Function<String, Object>> TEXTS =
      Map.of(OffsetDateTime.class, OffsetDateTime::parse, LocalDate.class, LocalDate::parse);

  static ValueKind of(Type type) {
    if (type instanceof ParameterizedType of) {
      ValueKind inner = of(of.getActualTypeArguments()[0]);
      return of.getRawType() == Optional.class ? maybe(inner) : list(inner, of);
    }
    Class<?> plain = (Class<?>) type;
    if (SAME.containsKey(plain)) {
      return new ValueKind(SAME.get(plain), false, v -> v, c -> c);
    }
    if (TEXTS.containsKey(plain)) {
      Function<String, Object> parse = TEXTS.get(plain);
      return new ValueKind(
          DataTypes.StringType, false, Object::toString, c -> parse.apply((String) c));
    }
    if (plain == OptionalDouble.class) {
      return new ValueKind(DataTypes.DoubleType, true, ValueKind::cell, ValueKind::number);
    }
    if (plain.isEnum()) {
      return new ValueKind(
          DataTypes.StringType, false, v -> ((Enum<?>) v).name(), c -> constant(plain, c));
    }
    return record(plain.asSubclass(Record.class));
  }

  private static <T extends Record> ValueKind record(Class<T> plain) {
    RecordRows<T> rows = RecordRows.of(plain);
    return new ValueKind(
        rows.schema(), false, v -> rows.row(plain.cast(v)), c -> rows.record((Row) c));
  }

  private static ValueKind maybe(ValueKind inner) {
    return new ValueKind(
        inner.type,
        true,
        v -> ((Optional<?>) v).map(inner::toCell).orElse(null),
        c -> Optional.ofNullable(c).map(inner.in));
  }

  private static ValueKind list(ValueKind inner, ParameterizedType type) {
    if (type.getRawType() != List.class) {
      throw new IllegalArgumentException("no row holds a " + type);
    }
    return new ValueKind(
        DataTypes.createArrayType(inner.type, inner.optional),
        false,
        v -> ((List<?>) v).stream().map(inner::toCell).toArray(),
        c -> values(c).stream().map(inner.in).toList());
  }

  private static List<?> values(Object cell) {
    return cell instanceof Object[] made
        ? java.util.Arrays.asList(made)
        : CollectionConverters.asJava((Seq<?>) cell);
  }

  private static Object cell(Object value) {
    OptionalDouble number = (OptionalDouble) value;
    return number.isPresent() ? number.getAsDouble() : null;
  }

  private static Object number(Object cell) {
    return cell == null ? OptionalDouble.empty() : OptionalDouble.of((double) cell);
  }

  private static Object constant(Class<?> type, Object cell) {
    for (Object constant : type.getEnumConstants()) {
      if (((Enum<?>) constant).name().equals(cell)) {
        return constant;
      }
    }
    throw new IllegalArgumentException(type.getSimpleName() + " has no " + cell);
  }

  Object toCell(Object value) {
    return out.apply(value);
  }

  Object toValue(Object cell) {
    return in.apply(cell);
  }
}
