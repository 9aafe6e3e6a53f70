// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.show;

import java.util.Timer;
import java.util.TimerTask;
import java.util.concurrent.atomic.AtomicBoolean;
import org.apache.spark.SparkContext;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerTaskStart;

/**
 * Kills the third task of a run midway, once, to show that it changes nothing; name it in {@code
 * spark.extraListeners}.
 */
public final class KillOneTask extends SparkListener {
  private static final long MIDWAY_MS = 1500;
  private static final int THIRD = 2;

  private final AtomicBoolean done = new AtomicBoolean();

  @Override
  public void onTaskStart(SparkListenerTaskStart start) {
    long task = start.taskInfo().taskId();
    if (start.taskInfo().index() == THIRD && done.compareAndSet(false, true)) {
      TimerTask kill =
          new TimerTask() {
            @Override
            public void run() {
              SparkContext.getOrCreate().killTaskAttempt(task, true, "killed midway on purpose");
            }
          };
      new Timer("kill one task", true).schedule(kill, MIDWAY_MS);
    }
  }
}
