// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import org.apache.spark.TaskContext;
import org.apache.spark.TaskKilledException;
import org.apache.spark.api.java.function.FlatMapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.MeasureBytes;
import org.raftgauge.batch.run.Measured;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * Measures a partition's photos one after the other on the task's one thread. A pure function of
 * the photos' bytes and the book: a task that is killed, repeated or run twice at once gives the
 * same rows.
 */
final class MeasureTask implements FlatMapFunction<Iterator<List<Listed>>, Row> {
  private static final long serialVersionUID = 1;

  private final Broadcast<BookFiles> book;
  private final ReadListed read;

  MeasureTask(Broadcast<BookFiles> book, ReadListed read) {
    this.book = book;
    this.read = read;
  }

  @Override
  public Iterator<Row> call(Iterator<List<Listed>> slices) {
    MeasureBytes measure = new MeasureBytes(book.value().open().book().measurer());
    Iterator<Listed> photos = new Flat(slices);
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return photos.hasNext();
      }

      @Override
      public Row next() {
        return RecordRows.of(Stored.class).row(stored(measure, photos.next()));
      }
    };
  }

  private Stored stored(MeasureBytes measure, Listed photo) {
    stopIfKilled();
    Measured measured = measured(measure, photo);
    // What a kill broke off is no row of the photo.
    stopIfKilled();
    return new Stored(measured, photo.bytes(), photo.modifiedMs());
  }

  private Measured measured(MeasureBytes measure, Listed photo) {
    byte[] bytes;
    try {
      bytes = read.bytes(photo);
    } catch (InputException unreadable) {
      Problem problem = unreadable.problems().get(0);
      return Measured.failed(photo.photo(), "", problem.found(), problem.remedy());
    }
    String sha256 = MeasureBytes.sha256(bytes);
    return sha256.equals(photo.earlierSha256())
        ? Known.mark(photo.photo(), sha256, measure.settings(photo.facts().facts()))
        : measure.measure(bytes, photo.facts().facts());
  }

  private static void stopIfKilled() {
    if (TaskContext.get().isInterrupted()) {
      throw new TaskKilledException("stopped between two photos");
    }
  }

  /** Runs through lists as one. */
  private static final class Flat implements Iterator<Listed> {
    private final Iterator<List<Listed>> lists;
    private Iterator<Listed> list = List.<Listed>of().iterator();

    Flat(Iterator<List<Listed>> lists) {
      this.lists = lists;
    }

    @Override
    public boolean hasNext() {
      while (!list.hasNext() && lists.hasNext()) {
        list = lists.next().iterator();
      }
      return list.hasNext();
    }

    @Override
    public Listed next() {
      if (!hasNext()) {
        throw new NoSuchElementException();
      }
      return list.next();
    }
  }
}
