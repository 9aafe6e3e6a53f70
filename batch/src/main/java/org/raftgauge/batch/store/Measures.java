// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;

/**
 * The history's photos as corrected: excluded ones are left out, moved ones show the raft that they
 * were moved to, times are mended. What is asked for is asked of the corrected photo.
 */
public final class Measures {
  private static final Comparator<Kept> BY_HASH = Comparator.comparing(k -> k.measure().sha256());

  /** Fewer photos are read as quickly by one. */
  private static final long MANY = 5_000;

  /** Sorts after every hash. */
  private static final String PAST_ALL = "~";

  private final Database database;
  private final Corrections corrections;
  private final List<Kept> corrected = new ArrayList<>();
  private Days read = new Days(LocalDate.MAX, LocalDate.MIN, -1, List.of());

  /**
   * The photos of some days as they were read: an evening's work asks for the same ones again.
   *
   * @param changes made to the history by then
   */
  private record Days(LocalDate first, LocalDate last, long changes, List<Kept> photos) {
    boolean hold(LocalDate from, LocalDate to, long changesNow) {
      return !from.isBefore(first) && !to.isAfter(last) && changes == changesNow;
    }
  }

  Measures(Database database, Corrections corrections) throws IOException {
    this.database = database;
    this.corrections = corrections;
    for (String sha256 : corrections.photos()) {
      database
          .within(c -> ReadMeasures.bySha256(c, sha256))
          .map(this::apply)
          .filter(k -> counts(k.measure()))
          .ifPresent(corrected::add);
    }
  }

  /** Returns the corrections that hold. */
  public Corrections corrections() {
    return corrections;
  }

  /**
   * Returns every correction ever entered, in the order of their numbers.
   *
   * @throws IOException if the file cannot be read
   */
  public List<Correction> entered() throws IOException {
    return database.within(CorrectionRows::read);
  }

  /**
   * Returns the same photos as corrected by another time.
   *
   * @param by what was entered at this moment or later is not looked at
   * @return itself where the same corrections hold
   * @throws IOException if the file cannot be read
   */
  public Measures correctedBy(Instant by) throws IOException {
    Corrections then = Corrections.of(entered(), by);
    return then.all().equals(corrections.all()) ? this : new Measures(database, then);
  }

  /**
   * Finds the used photos that show a raft.
   *
   * @param raft its id
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Kept> findRaft(String raft) throws IOException {
    return with(
        database.within(c -> ReadMeasures.byRaft(c, raft)),
        p -> p.status() == PhotoStatus.USED && shows(p, raft));
  }

  /**
   * Finds the photos of some days that show rafts, used or held.
   *
   * @param first the first day, by the date written in the photo's time
   * @param last the last day
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public synchronized List<Kept> takenBetween(LocalDate first, LocalDate last) throws IOException {
    long changes = database.changes();
    if (!read.hold(first, last, changes)) {
      read =
          new Days(
              first,
              last,
              changes,
              byHands((c, hashes) -> ReadMeasures.byDays(c, List.of(first, last), hashes)));
    }
    List<Kept> asked = read.photos.stream().filter(k -> taken(k.measure(), first, last)).toList();
    return with(asked, p -> taken(p, first, last));
  }

  /** Reads what the history has of photos whose hashes are from one to before another. */
  private interface Hand<T> {
    List<T> read(Connection history, List<String> hashes) throws SQLException;
  }

  /** Reads a large farm's photos by two hands at once; hashes begin with any hexadecimal digit. */
  private <T> List<T> byHands(Hand<T> hand) throws IOException {
    if (database.within(ReadMeasures::count) < MANY) {
      return database.within(c -> hand.read(c, List.of("", PAST_ALL)));
    }
    List<List<T>> halves =
        database.alongside(
            c -> hand.read(c, List.of("", "8")), c -> hand.read(c, List.of("8", PAST_ALL)));
    return halves.stream().flatMap(List::stream).toList();
  }

  /**
   * Finds the latest day of photos that show rafts, used or held.
   *
   * @param notAfter later days are a wrong clock's, unless there are no others
   * @return the date written in their times; empty where there is none
   * @throws IOException if the file cannot be read
   */
  public Optional<LocalDate> latestDay(LocalDate notAfter) throws IOException {
    Optional<LocalDate> day = database.within(c -> ReadMeasures.latestDay(c, notAfter));
    return day.isPresent()
        ? day
        : database.within(c -> ReadMeasures.latestDay(c, LocalDate.of(9999, 12, 31)));
  }

  /**
   * Finds the photos of some days that show a raft, used or held.
   *
   * @param days raft and days
   * @return what they said, in a stable order
   * @throws IOException if the file cannot be read
   */
  public List<Kept> takenBetween(RaftDays days) throws IOException {
    return with(
        database.within(c -> ReadMeasures.byRaftDays(c, days)),
        p -> shows(p, days.raft()) && taken(p, days.first(), days.last()));
  }

  /**
   * Reads what a station's photos say of it.
   *
   * @param station its name
   * @return its photos in the order of time, without those that are excluded
   * @throws IOException if the file cannot be read
   */
  public List<StationPast.Photo> stationPast(String station) throws IOException {
    return StationPast.inOrder(
        byHands((c, hashes) -> StationPast.read(c, station, corrections, hashes)));
  }

  /** Puts corrected photos in the place of what is there of their bytes. */
  private List<Kept> with(List<Kept> read, Predicate<PhotoMeasure> wanted) {
    if (corrections.all().isEmpty()) {
      return read;
    }
    List<Kept> all = new ArrayList<>();
    read.stream()
        .filter(k -> !corrections.photos().contains(k.measure().sha256()))
        .forEach(all::add);
    corrected.stream().filter(k -> wanted.test(k.measure())).forEach(all::add);
    all.sort(BY_HASH);
    return all;
  }

  private Kept apply(Kept kept) {
    return new Kept(corrections.apply(kept.measure()), kept.origin(), kept.picturedRun());
  }

  private static boolean counts(PhotoMeasure photo) {
    return photo.status() == PhotoStatus.USED || photo.status() == PhotoStatus.HELD;
  }

  private static boolean shows(PhotoMeasure photo, String raft) {
    return photo.rafts().stream().anyMatch(r -> r.raft().equals(Optional.of(raft)));
  }

  private static boolean taken(PhotoMeasure photo, LocalDate first, LocalDate last) {
    Optional<LocalDate> day = photo.takenAt().map(OffsetDateTime::toLocalDate);
    return day.isPresent() && !day.get().isBefore(first) && !day.get().isAfter(last);
  }
}
