// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.rows;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/**
 * Turns records of plain values into rows and back, every value exactly: a column for each
 * component, in its name and order. A component that is added to a record is a column more.
 *
 * @param <T> the record
 */
public final class RecordRows<T extends Record> {
  private static final ClassValue<RecordRows<?>> KNOWN =
      new ClassValue<>() {
        @Override
        protected RecordRows<?> computeValue(Class<?> type) {
          return new RecordRows<>(type.asSubclass(Record.class));
        }
      };

  private final Class<T> type;
  private final RecordComponent[] components;
  private final List<ValueKind> kinds = new ArrayList<>();
  private final Constructor<T> constructor;

  private RecordRows(Class<T> type) {
    this.type = type;
    this.components = type.getRecordComponents();
    Class<?>[] types = new Class<?>[components.length];
    for (int i = 0; i < types.length; i++) {
      types[i] = components[i].getType();
      kinds.add(ValueKind.of(components[i].getGenericType()));
    }
    try {
      this.constructor = type.getDeclaredConstructor(types);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException("every record has its canonical constructor", e);
    }
  }

  /**
   * Returns the rows of a record.
   *
   * @param type a public record of texts, numbers, flags, enums, dates, times, other such records,
   *     and optional ones or lists of them
   * @param <T> the record
   * @return turns it into rows and back
   */
  @SuppressWarnings("unchecked") // computed for this very class
  public static <T extends Record> RecordRows<T> of(Class<T> type) {
    return (RecordRows<T>) KNOWN.get(type);
  }

  /** Returns names and types of the columns. */
  public StructType schema() {
    StructField[] fields = new StructField[components.length];
    for (int i = 0; i < fields.length; i++) {
      ValueKind kind = kinds.get(i);
      fields[i] =
          DataTypes.createStructField(components[i].getName(), kind.type(), kind.optional());
    }
    return DataTypes.createStructType(fields);
  }

  /**
   * Makes a row.
   *
   * @param value the record
   * @return a row of {@link #schema()}
   */
  public Row row(T value) {
    Object[] cells = new Object[components.length];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = kinds.get(i).toCell(read(components[i], value));
    }
    return RowFactory.create(cells);
  }

  /**
   * Reads a row.
   *
   * @param row whose first columns are those of {@link #schema()}
   * @return an equal record
   */
  public T record(Row row) {
    Object[] values = new Object[components.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = kinds.get(i).toValue(row.get(i));
    }
    try {
      return constructor.newInstance(values);
    } catch (InvocationTargetException e) {
      throw new IllegalStateException("no " + type.getSimpleName() + ": " + row, e.getCause());
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(type + " is not public", e);
    }
  }

  private Object read(RecordComponent component, T value) {
    try {
      return component.getAccessor().invoke(value);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(type + " is not public", e);
    }
  }
}
