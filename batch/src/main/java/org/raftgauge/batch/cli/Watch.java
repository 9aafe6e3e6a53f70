// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.FoundPhoto;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.MeasureArrival;
import org.raftgauge.batch.screen.AtTheStation;
import org.raftgauge.batch.screen.Signal;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Watches a photo folder: measures each photo as soon as it is whole, tells at once whether the
 * raft may go on, and publishes the results when no photo has come for a while.
 */
final class Watch {
  /** Time between looks; a file that stood still for one is whole. */
  private static final long LOOK_MS = 1000;

  private final Job job;
  private final WatchScreen screen;
  private final Arrivals arrivals = new Arrivals();
  private final CountDownLatch stop = new CountDownLatch(1);
  private long lastPhotoNanos = System.nanoTime();
  private int seen;
  private int unpublished;

  /**
   * What is watched.
   *
   * @param photos the folder
   * @param workplace opens the folder
   * @param open the book
   * @param arrival measures a photo
   * @param publish publishes all photos of the folder and returns where
   * @param quietS seconds without a photo after which the results are published
   */
  record Job(
      Path photos,
      Workplace workplace,
      Workplace.OpenBook open,
      MeasureArrival arrival,
      Publish publish,
      long quietS) {}

  /** Publishes. */
  interface Publish {
    Path now() throws InputException, IOException;
  }

  Watch(Job job, WatchScreen screen) {
    this.job = job;
    this.screen = screen;
  }

  /** Stops, as soon as the photo at hand is done; what is being published is left. */
  void stop() {
    stop.countDown();
  }

  /** Watches until it is stopped. */
  void run() throws InputException, IOException {
    arrivals.begin(find().photos());
    screen.start(job.photos());
    ExecutorService background =
        Executors.newSingleThreadExecutor(
            task -> {
              Thread thread = new Thread(task, "publish");
              thread.setDaemon(true);
              return thread;
            });
    Future<Path> publishing = null;
    try {
      while (!stop.await(LOOK_MS, TimeUnit.MILLISECONDS)) {
        for (FoundPhoto photo : arrivals.look(find().photos())) {
          tell(photo);
        }
        if (publishing != null && publishing.isDone()) {
          published(publishing);
          publishing = null;
        }
        if (publishing == null && unpublished > 0 && quiet()) {
          unpublished = 0;
          publishing = background.submit(() -> job.publish().now());
        }
      }
    } catch (InterruptedException asked) {
      Thread.currentThread().interrupt();
    } finally {
      background.shutdownNow();
      screen.end(seen, unpublished + (publishing == null ? 0 : 1) > 0);
    }
  }

  private FoundPhotos find() {
    try {
      return job.workplace().photos(job.photos());
    } catch (InputException gone) {
      screen.trouble(gone.problems().get(0).toString());
      return new FoundPhotos(List.of(), List.of());
    }
  }

  private boolean quiet() {
    return System.nanoTime() - lastPhotoNanos > job.quietS() * 1_000_000_000L;
  }

  private void tell(FoundPhoto photo) throws IOException {
    if (stop.getCount() == 0) {
      return;
    }
    if (isOfSecond(photo)) {
      unpublished++; // it is measured with the first camera's photo, when the results are published
      lastPhotoNanos = System.nanoTime();
      return;
    }
    screen.show(photo.facts().photo(), Signal.waiting(photo.facts().photo()), seen);
    PhotoMeasure measure = job.arrival().measure(photo);
    seen++;
    unpublished++;
    lastPhotoNanos = System.nanoTime();
    screen.show(photo.facts().photo(), AtTheStation.of(measure, this::planted), seen);
  }

  private boolean isOfSecond(FoundPhoto photo) {
    return MeasurePhoto.stationOf(job.open().farm().book(), photo.facts())
        .filter(station -> station.tookWithSecond(photo.facts().photo()))
        .isPresent();
  }

  private Optional<Set<SiteId>> planted(RaftMeasure raft, PhotoMeasure photo) {
    Farm farm = job.open().farm();
    String name = raft.raft().orElseThrow();
    List<SiteId> sites = raft.sites().stream().map(SiteMeasure::site).toList();
    return photo
        .takenAt()
        .filter(at -> !farm.plantingsOn(name, farm.evening(at)).isEmpty())
        .map(at -> farm.plantsOn(name, sites, at).keySet());
  }

  private void published(Future<Path> publishing) throws InterruptedException {
    try {
      screen.published(publishing.get());
    } catch (ExecutionException e) {
      unpublished++;
      lastPhotoNanos = System.nanoTime();
      screen.trouble("the results could not be published: " + e.getCause().getMessage());
    }
  }
}
