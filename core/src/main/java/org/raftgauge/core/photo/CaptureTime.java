// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.photo.TakenAt.Source;

/**
 * Decides when a photo was taken: the manifest's word, else the camera's clock, else the date in
 * the file's name.
 *
 * <p>Local times are the farm's. A local time that comes twice, when clocks go back, is taken as
 * the first of the two; one that does not exist, when clocks go forward, is moved forward by the
 * length of the gap and doubted.
 */
public final class CaptureTime {
  /** What a date without a time stands for: 18:00, as the crop book says. */
  public static final LocalTime TIME_OF_A_BARE_DATE = LocalTime.of(18, 0);

  /** First year believed; a camera that lost its battery starts years before. A working value. */
  public static final int FIRST_YEAR_BELIEVED = 2015;

  // How far ahead of the caller's clock a camera may run undoubted. A working value.
  private static final Duration AHEAD_ALLOWED = Duration.ofMinutes(10);

  private static final String GIVE_A_TIME =
      "set the camera's clock, put the date into the file's name, or give taken_at in manifest.csv";

  private CaptureTime() {}

  /**
   * Decides when a photo was taken.
   *
   * <p>The camera's clock plus the station's clock offset is the farm's local time. Where that
   * offset is zero and the file tells the camera's own offset from UTC, that is used instead of the
   * farm's zone. A camera clock from before {@link #FIRST_YEAR_BELIEVED} gives way to a date in the
   * file's name; the doubt stays. It is doubted too where that date is neither its calendar day nor
   * its evening on the farm, or where what the name writes is no day at all. Manifest and file name
   * are taken as they are.
   *
   * @param clues what is said of the time
   * @param clock the farm's time and the camera's departure from it
   * @return the farm's time with its doubts, or why there is none
   */
  public static TimeResult of(TimeClues clues, FarmClock clock) {
    if (clues.manifest().isPresent()) {
      return ofManifest(clues.manifest().get(), clock);
    }
    List<String> doubts = new ArrayList<>();
    Optional<String> written = clues.tags().takenAt().filter(TimeTexts::isFilledIn);
    Optional<LocalDateTime> camera = written.flatMap(TimeTexts::parseExif);
    if (written.isPresent() && camera.isEmpty()) {
      doubts.add("the camera's time \"" + written.get() + "\" cannot be read");
    }
    clues
        .name()
        .impossible()
        .ifPresent(text -> doubts.add("\"" + text + "\" in the file name is no day or time"));
    Optional<LocalDate> named = clues.name().date();
    if (camera.isPresent() && (isBelieved(camera.get()) || named.isEmpty())) {
      ZonedDateTime at = cameraTime(camera.get(), clues.tags(), clock, doubts);
      named.ifPresent(date -> compare(at, date, clock, doubts));
      return taken(at, Source.CAMERA, clock, doubts);
    }
    camera.ifPresent(
        c -> doubts.add("the camera's clock says " + c.toLocalDate() + "; the file name is used"));
    if (named.isEmpty()) {
      String reason =
          doubts.isEmpty()
              ? "nothing tells when the photo was taken"
              : "nothing tells when the photo was taken: " + String.join("; ", doubts);
      return new NoTime(reason, GIVE_A_TIME);
    }
    LocalDateTime local = named.get().atTime(clues.name().time().orElse(TIME_OF_A_BARE_DATE));
    return taken(onFarm(local, clock.zone(), doubts), Source.FILE_NAME, clock, doubts);
  }

  private static TimeResult ofManifest(String text, FarmClock clock) {
    Optional<TemporalAccessor> time = TimeTexts.parseIso(text);
    if (time.isEmpty()) {
      return new NoTime(
          "taken_at \"" + text + "\" of the manifest is not a time",
          "write it as 2026-03-01T18:20 or 2026-03-01T18:20+01:00");
    }
    List<String> doubts = new ArrayList<>();
    ZonedDateTime at =
        time.get() instanceof OffsetDateTime fixed
            ? fixed.atZoneSameInstant(clock.zone())
            : onFarm(local(time.get()), clock.zone(), doubts);
    return taken(at, Source.MANIFEST, clock, doubts);
  }

  private static LocalDateTime local(TemporalAccessor time) {
    return time instanceof LocalDate date
        ? date.atTime(TIME_OF_A_BARE_DATE)
        : LocalDateTime.from(time);
  }

  private static boolean isBelieved(LocalDateTime time) {
    return time.getYear() >= FIRST_YEAR_BELIEVED;
  }

  private static ZonedDateTime cameraTime(
      LocalDateTime camera, PhotoTags tags, FarmClock clock, List<String> doubts) {
    if (clock.cameraOffset().isZero()) {
      Optional<ZonedDateTime> fixed =
          tags.utcOffset()
              .flatMap(TimeTexts::parseOffset)
              .map(offset -> camera.atOffset(offset).atZoneSameInstant(clock.zone()));
      if (fixed.isPresent()) {
        return fixed.get();
      }
    }
    return onFarm(camera.plus(clock.cameraOffset()), clock.zone(), doubts);
  }

  private static ZonedDateTime onFarm(LocalDateTime local, ZoneId zone, List<String> doubts) {
    ZonedDateTime at = local.atZone(zone);
    if (!at.toLocalDateTime().equals(local)) {
      doubts.add("the time " + local + " does not exist: clocks went forward over it");
    }
    return at;
  }

  /** Doubts a date in the name that is neither the calendar's nor that of the farm's evening. */
  private static void compare(
      ZonedDateTime at, LocalDate named, FarmClock clock, List<String> doubts) {
    LocalDate camera = at.toLocalDate();
    if (!named.equals(camera) && !named.equals(clock.day().evening(at.toInstant()))) {
      doubts.add("the camera's clock says " + camera + ", the file name " + named);
    }
  }

  private static TakenAt taken(
      ZonedDateTime at, Source source, FarmClock clock, List<String> doubts) {
    if (at.getYear() < FIRST_YEAR_BELIEVED) {
      doubts.add("the year " + at.getYear() + " is before " + FIRST_YEAR_BELIEVED);
    }
    Optional<Instant> latest = clock.now().map(now -> now.plus(AHEAD_ALLOWED));
    if (latest.isPresent() && at.toInstant().isAfter(latest.get())) {
      doubts.add("the time " + at.toOffsetDateTime() + " is in the future");
    }
    return new TakenAt(at.toOffsetDateTime(), source, String.join("; ", doubts));
  }
}
