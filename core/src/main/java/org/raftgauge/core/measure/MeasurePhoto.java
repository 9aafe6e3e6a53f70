// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.photo.CaptureTime;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodeResult;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.photo.FarmClock;
import org.raftgauge.core.photo.FinePhoto;
import org.raftgauge.core.photo.NoTime;
import org.raftgauge.core.photo.PhotoQuality;
import org.raftgauge.core.photo.TakenAt;
import org.raftgauge.core.photo.TimeClues;
import org.raftgauge.core.photo.TimeResult;
import org.raftgauge.core.photo.UnreadablePhoto;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.EdgeBlur;
import org.raftgauge.core.plane.FoundBoard;
import org.raftgauge.core.plane.FoundBoards;

/**
 * Measures a photo: from its bytes to projected leaf area per planting site. Pure: the same bytes,
 * facts and book give the same result, in any thread or process.
 */
public final class MeasurePhoto {
  private final CropBook book;
  private final PhotoFacts facts;
  private final PhotoName name;
  private final BoardsOfPhoto boards;

  MeasurePhoto(CropBook book, PhotoFacts facts) {
    this.book = book;
    this.facts = facts;
    this.name = FactsOfName.of(book, facts.photo());
    this.boards = new BoardsOfPhoto(book, facts, name);
  }

  /**
   * Measures a photo.
   *
   * @param bytes of the photo's file
   * @param facts what else is known of it
   * @param book the crop book
   * @return what it says; whatever is wrong with it is in the result
   */
  public static PhotoResult measure(byte[] bytes, PhotoFacts facts, CropBook book) {
    return new MeasurePhoto(book, facts).measure(bytes, Optional.empty());
  }

  /**
   * Measures a photo together with what the station's second camera took at the same moment.
   *
   * @param bytes of the first camera's file
   * @param second of the second camera's file; empty where there is none
   * @param facts what else is known of the photo
   * @param book the crop book
   * @return what it says; whatever is wrong with the second picture costs its heights only
   */
  public static PhotoResult measure(
      byte[] bytes, Optional<byte[]> second, PhotoFacts facts, CropBook book) {
    return new MeasurePhoto(book, facts).measure(bytes, second);
  }

  /**
   * Reads the raft from a photo's file name.
   *
   * @param book the crop book, whose pattern is used
   * @param photo its path below the photo folder
   * @return the raft, where the name tells it
   */
  public static Optional<String> raftOfName(CropBook book, String photo) {
    return FactsOfName.of(book, photo).raft();
  }

  /**
   * Tells at which station a photo was taken.
   *
   * @param book the crop book
   * @param facts what is known of the photo
   * @return the station, where something tells it and the book has it
   */
  public static Optional<Station> stationOf(CropBook book, PhotoFacts facts) {
    return StationOf.photo(book, facts, FactsOfName.of(book, facts.photo())).station();
  }

  private PhotoResult measure(byte[] bytes, Optional<byte[]> second) {
    PhotoStory story = PhotoStory.begin(facts.photo(), Sha256.hex(bytes));
    StationOf.Answer station = StationOf.photo(book, facts, name);
    if (station.station().filter(s -> s.tookWithSecond(facts.photo())).isPresent()) {
      return bare(
          story
              .at(station.station().get().name())
              .end(PhotoStatus.SKIPPED, PhotoMeasure.OF_SECOND_CAMERA, ""),
          Optional.empty());
    }
    DecodeResult decoded =
        DecodePhoto.decode(bytes, (width, height) -> parts(station, second, width));
    if (decoded instanceof UnreadablePhoto bad) {
      return bare(story.end(PhotoStatus.REFUSED, bad.reason(), bad.remedy()), Optional.empty());
    }
    DecodedPhoto photo = (DecodedPhoto) decoded;
    if (station.station().isEmpty()) {
      return bare(
          story.end(PhotoStatus.REFUSED, station.reason(), station.remedy()), Optional.of(photo));
    }
    Taken taken = new Taken(photo, station.station().get(), second);
    return timed(story.at(taken.station.name()), taken);
  }

  /** A photo, its station, and what the station's second camera took at the same moment. */
  private record Taken(DecodedPhoto photo, Station station, Optional<byte[]> second) {}

  private PhotoResult timed(PhotoStory story, Taken at) {
    DecodedPhoto photo = at.photo;
    Station station = at.station;
    Duration offset = station.clockOffset();
    TimeResult time =
        CaptureTime.of(
            new TimeClues(facts.takenAt(), photo.tags(), name),
            new FarmClock(book.farmDay(), offset, Optional.empty()));
    PhotoStory judged = story.judged(PhotoQuality.judge(photo.image()));
    if (time instanceof NoTime none) {
      return bare(
          judged.end(PhotoStatus.REFUSED, none.reason(), none.remedy()), Optional.of(photo));
    }
    TakenAt taken = (TakenAt) time;
    PhotoStory dated = judged.taken(taken.at(), taken.clockDoubt());
    if (judged.quality().orElseThrow().dark()) {
      return bare(dated.end(PhotoStatus.SKIPPED, "taken in the dark", ""), Optional.of(photo));
    }
    Optional<Greyness.Fault> fault = Greyness.fault(photo.image());
    if (fault.isPresent()) {
      return bare(
          dated.end(PhotoStatus.REFUSED, fault.get().reason(), fault.get().remedy()),
          Optional.of(photo));
    }
    PhotoStory.Scene scene =
        new PhotoStory.Scene(station, book.farmDay().evening(taken.at().toInstant()), taken.at());
    return boards(dated, at, scene);
  }

  private PhotoResult boards(PhotoStory story, Taken at, PhotoStory.Scene scene) {
    Look first = look(at, scene);
    Look look =
        CloserLook.neededAfter(first.boards)
            ? closer(at, scene).map(first::witness).orElse(first)
            : first;
    RgbImage image = look.image;
    if (!look.found.refused().isEmpty()) {
      return withPicture(
          story.end(PhotoStatus.REFUSED, look.found.refused(), look.found.remedy()), image);
    }
    if (look.outcomes.isEmpty()) {
      return withPicture(
          story.end(PhotoStatus.REFUSED, noBoard(scene), noBoardRemedy(scene)), image);
    }
    return sumUp(story, look);
  }

  /** What came of looking at a photo in one detail. */
  private record Look(
      RgbImage image,
      FoundBoards found,
      List<FoundBoard> boards,
      List<MeasureBoard.Outcome> outcomes,
      PhotoWitness witness) {

    /** Of camera and lens every photo of a station is to tell in the same detail. */
    Look witness(Look closer) {
      boolean told = found.refused().isEmpty() && !outcomes.isEmpty();
      return told
          ? new Look(closer.image, closer.found, closer.boards, closer.outcomes, witness)
          : closer;
    }
  }

  /** Looks at all the pixels of a photo that was averaged. */
  private Optional<Look> closer(Taken at, PhotoStory.Scene scene) {
    return at.photo.fine().stream()
        .map(fine -> at.photo.closer())
        .map(photo -> look(new Taken(photo, at.station, at.second), scene))
        .findFirst();
  }

  private Look look(Taken at, PhotoStory.Scene scene) {
    RgbImage image = at.photo.image();
    FoundBoards found = boards.find(at.photo, scene);
    if (!found.refused().isEmpty()) {
      return new Look(image, found, List.of(), List.of(), PhotoWitness.NONE);
    }
    List<MeasureBoard.Outcome> outcomes = new ArrayList<>();
    WhoseBoard whose = new WhoseBoard(book, facts, name, scene);
    List<FoundBoard> wanted = whose.wanted(found.boards(), image);
    if (!CloserLook.neededAfter(wanted)) {
      at.photo.fine().ifPresent(FinePhoto::letGo);
    }
    EdgeBlur blur = EdgeBlur.of(image, wanted);
    PhotoViews views = PhotoViews.of(image, at.second, blur);
    MeasureBoard measure = new MeasureBoard(book, views, scene);
    List<Optional<MeasureBoard.Lit>> lit = SharedLight.among(wanted, measure);
    for (int i = 0; i < wanted.size(); i++) {
      WhoseBoard.Identity identity = whose.identity(wanted.get(i), wanted.size());
      outcomes.add(measure.measure(wanted.get(i), identity, lit.get(i)));
    }
    PhotoWitness witness =
        WitnessOf.photo(image, new WitnessOf.Boards(blur, lit, outcomes), found.shift());
    return new Look(image, found, wanted, outcomes, witness);
  }

  /** Two pictures are matched as they were taken; one is averaged to what its boards need. */
  private int parts(StationOf.Answer answer, Optional<byte[]> second, int width) {
    return answer
        .station()
        .filter(s -> second.isEmpty())
        .map(s -> NeededDetail.parts(s, boards.layoutsAt(s), width))
        .orElse(1);
  }

  private static String noBoard(PhotoStory.Scene scene) {
    return scene.station().kind() == Station.Kind.PASSING
        ? "no raft was found: no corner marker, tag or board outline"
        : "no raft was found: the station has no slot with a usable layout";
  }

  private static String noBoardRemedy(PhotoStory.Scene scene) {
    return scene.station().kind() == Station.Kind.PASSING
        ? "photograph it again with the whole board and its markers in view"
        : "mend the slots of station " + scene.station().name();
  }

  private static PhotoResult sumUp(PhotoStory story, Look look) {
    List<MeasureBoard.Outcome> outcomes = look.outcomes;
    List<RaftMeasure> rafts = outcomes.stream().map(MeasureBoard.Outcome::raft).toList();
    OptionalDouble cast =
        outcomes.stream()
            .map(MeasureBoard.Outcome::lightCast)
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .max();
    List<String> held = rafts.stream().map(RaftMeasure::held).filter(h -> !h.isEmpty()).toList();
    boolean allHeld = held.size() == rafts.size();
    String reason = String.join("; ", held.stream().distinct().toList());
    String remedy =
        outcomes.stream()
            .map(MeasureBoard.Outcome::remedy)
            .filter(r -> !r.isEmpty())
            .findFirst()
            .orElse("");
    PhotoMeasure measure =
        story.measure(
            allHeld ? PhotoStatus.HELD : PhotoStatus.USED,
            reason,
            remedy,
            new PhotoStory.Found(rafts, cast, look.witness));
    List<Optional<MeasureBoard.Painting>> boards =
        outcomes.stream().map(MeasureBoard.Outcome::painting).toList();
    return new PhotoResult(
        measure,
        Optional.of(look.image),
        Optional.of(DrawCanopy.inPhoto(look.image, boards)),
        outcomes.stream().map(MeasureBoard.Outcome::drawing).toList(),
        DrawCanopy.heights(look.image, boards));
  }

  private static PhotoResult bare(PhotoMeasure measure, Optional<DecodedPhoto> photo) {
    return new PhotoResult(measure, photo.map(DecodedPhoto::image), Optional.empty(), List.of());
  }

  private static PhotoResult withPicture(PhotoMeasure measure, RgbImage image) {
    return new PhotoResult(measure, Optional.of(image), Optional.empty(), List.of());
  }
}
