// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.raftgauge.core.book.Crop;

/** Judges stations, ponds and rafts as wholes. */
final class JudgeGroups {
  private static final double DOUBTED = 0.05;
  private static final String DOUBT =
      "the whole raft departs from its own growth in one photo; photograph it again";

  private final FarmPass pass;
  private final LocalDate evening;
  private final Map<String, BoardShares.Test> boards;
  private final Also also;
  private final PatchLimits limits;
  private final Set<String> laggingPonds = new TreeSet<>();
  private final Set<String> laggingRafts = new TreeSet<>();

  /**
   * What is known of groups besides their levels.
   *
   * @param trays young plants by raft
   * @param growth of ponds as wholes
   */
  record Also(Map<String, Tray> trays, PondGrowth growth) {}

  /**
   * @param pass the farm after the evening
   * @param evening the evening
   * @param boards patterns over the boards of rafts
   * @param also what else is known
   */
  JudgeGroups(FarmPass pass, LocalDate evening, Map<String, BoardShares.Test> boards, Also also) {
    this.pass = pass;
    this.evening = evening;
    this.boards = boards;
    this.also = also;
    this.limits = new PatchLimits(pass);
    for (Patch patch : tonight()) {
      pass.ponds()
          .pond(patch.pond())
          .filter(GroupTrack::lagging)
          .ifPresent(t -> laggingPonds.add(patch.pond()));
    }
    for (Patch patch : mainPatches()) {
      pass.ponds()
          .raft(patch)
          .filter(GroupTrack::lagging)
          .ifPresent(t -> laggingRafts.add(patch.raft()));
    }
  }

  private List<Patch> tonight() {
    return pass.patches().stream()
        .filter(p -> p.last().filter(l -> l.evening().equals(evening)).isPresent())
        .toList();
  }

  /** Returns of each raft seen tonight the patch with most plants: a few new ones are not it. */
  private Collection<Patch> mainPatches() {
    Map<String, Patch> rafts = new TreeMap<>();
    tonight().forEach(p -> rafts.merge(p.raft(), p, (a, b) -> plants(b) > plants(a) ? b : a));
    return rafts.values();
  }

  private static int plants(Patch patch) {
    return patch.last().orElseThrow().plants();
  }

  /** Says how a site's departure spreads. */
  Pattern pattern(Follow plant) {
    if (stepAt(plant).isPresent()) {
      return Pattern.STATION;
    }
    if (slow(plant.series().planting().pond())) {
      return Pattern.POND;
    }
    String raft = plant.series().last().raft();
    return laggingRafts.contains(raft) ? Pattern.RAFT : board(raft);
  }

  private boolean slow(String pond) {
    return laggingPonds.contains(pond) || also.growth().of(pond).isPresent();
  }

  /** Says whether all that a plant is held against tonight has slowed with it. */
  boolean slowedTogether(Follow plant) {
    return also.growth().slowedTogether(plant.cohort());
  }

  private Pattern board(String raft) {
    return Optional.ofNullable(boards.get(raft))
        .map(BoardShares.Test::pattern)
        .orElse(Pattern.NONE);
  }

  /** Returns tonight's step of the station that saw a plant. */
  Optional<StationStep> stepAt(Follow plant) {
    return Optional.ofNullable(pass.stations().steps().get(plant.series().last().station()));
  }

  /** Returns the rows of stations that stepped tonight or whose offset is still taken off. */
  List<Judged> stations() {
    List<Judged> rows = new ArrayList<>();
    StationWatch watch = pass.stations();
    Set<String> stations = new TreeSet<>(watch.offsets().keySet());
    stations.addAll(watch.steps().keySet());
    tonight()
        .forEach(
            p -> p.last().map(PatchLevel::station).filter(watch::ramp).ifPresent(stations::add));
    for (String station : stations) {
      words(watch, station).ifPresent(what -> rows.add(station(station, what)));
    }
    return rows;
  }

  private static Optional<String> words(StationWatch watch, String station) {
    StationStep step = watch.steps().get(station);
    if (watch.unsettled(station)) {
      return Optional.of(step.words() + "; camera and pond cannot be told apart yet: check both");
    }
    if (watch.ramp(station)) {
      return Optional.of(
          "all that "
              + StationStep.named(station)
              + " sees departs from its growth evening after evening: check pond and"
              + " camera");
    }
    if (step != null) {
      return Optional.of(step.words() + step.whose());
    }
    double offset = watch.offset(station);
    return Math.abs(offset) > DOUBTED
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "areas of %s are corrected by %+.0f %% since its camera stepped; check"
                    + " camera, lens and height",
                StationStep.named(station),
                100 * Math.expm1(-offset)))
        : Optional.empty();
  }

  private static Judged station(String station, String evidence) {
    return new Judged(
        Judged.Scope.STATION,
        Judged.Place.ofStation(station),
        Verdict.HELD,
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Pattern.STATION,
        evidence);
  }

  /** Returns the rows of the ponds seen tonight. */
  List<Judged> ponds() {
    Set<String> ponds = new TreeSet<>();
    tonight().forEach(p -> ponds.add(p.pond()));
    List<Judged> rows = new ArrayList<>();
    ponds.forEach(pond -> rows.add(pond(pond)));
    return rows;
  }

  private Judged pond(String pond) {
    Optional<GroupTrack> track = pass.ponds().pond(pond);
    Optional<PondGrowth.Found> growth = also.growth().of(pond);
    List<Verdict> found = new ArrayList<>();
    growth.map(g -> g.slowing().kind().verdict()).ifPresent(found::add);
    if (laggingPonds.contains(pond) && !found.contains(Verdict.LAGGING)) {
      found.add(Verdict.LAGGING);
    }
    String level = GroupWords.pond(track, limits.ofPond(pond));
    return new Judged(
        Judged.Scope.POND,
        Judged.Place.ofPond(pond),
        found.isEmpty() ? toldOf(track, limits.ofPond(pond)) : found.get(0),
        found.isEmpty() ? found : found.subList(1, found.size()),
        Optional.empty(),
        Optional.empty(),
        found.isEmpty() ? Pattern.NONE : Pattern.POND,
        growth
            .map(worst -> SlowingWords.of(worst, also.growth().all(pond)))
            .map(words -> laggingPonds.contains(pond) ? words + "; " + level : words)
            .orElse(level));
  }

  /** Returns the rows of the rafts seen tonight. */
  List<Judged> rafts() {
    return mainPatches().stream().map(this::raft).toList();
  }

  private Judged raft(Patch patch) {
    PatchLevel level = patch.last().orElseThrow();
    Optional<GroupTrack> track = pass.ponds().raft(patch);
    boolean lagging = laggingRafts.contains(patch.raft());
    boolean alike = !lagging && also.growth().slowedTogether(patch.cohort());
    Verdict calm = alike ? Verdict.NOT_TOLD : toldOf(track, limits.of(patch));
    Verdict verdict = level.doubtful() ? Verdict.HELD : lagging ? Verdict.LAGGING : calm;
    Pattern pattern =
        slow(patch.pond()) ? Pattern.POND : lagging ? Pattern.RAFT : board(patch.raft());
    Optional<Expected> expected = patch.cohort().expectedOfRaft(patch.raft(), level.age());
    String words = words(patch, track, expected);
    String evidence = level.doubtful() ? DOUBT : alike ? SlowingWords.ALL_SLOWED + words : words;
    return new Judged(
        Judged.Scope.RAFT,
        new Judged.Place(
            level.station(),
            patch.pond(),
            patch.raft(),
            Optional.empty(),
            "",
            patch.crop(),
            Optional.empty(),
            OptionalDouble.of(level.age())),
        verdict,
        List.of(),
        track.flatMap(t -> expected.map(e -> ShareOf.group(t, level, e))),
        Optional.empty(),
        pattern,
        evidence);
  }

  private static Verdict toldOf(Optional<GroupTrack> track, Crop.Limits limits) {
    boolean told = track.filter(t -> Told.isNarrow(t.lo95(), t.hi95(), limits)).isPresent();
    return told ? Verdict.ON_TRACK : Verdict.NOT_TOLD;
  }

  private String words(Patch patch, Optional<GroupTrack> track, Optional<Expected> expected) {
    List<String> parts =
        new ArrayList<>(List.of(GroupWords.raft(track, expected, limits.of(patch))));
    Optional.ofNullable(boards.get(patch.raft()))
        .map(BoardShares.Test::words)
        .ifPresent(parts::add);
    Optional.ofNullable(also.trays().get(patch.raft())).map(Tray::words).ifPresent(parts::add);
    return String.join("; ", parts);
  }
}
