// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.photo.CaptureTime;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodeResult;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.photo.FarmClock;
import org.raftgauge.core.photo.NoTime;
import org.raftgauge.core.photo.TakenAt;
import org.raftgauge.core.photo.TimeClues;
import org.raftgauge.core.photo.TimeResult;
import org.raftgauge.core.photo.UnreadablePhoto;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.EdgeBlur;
import org.raftgauge.core.plane.FoundBoard;
import org.raftgauge.core.plane.FoundBoards;

/**
 * Takes a photo as far as measuring does before a colour model comes in: boards found, light
 * evened.
 */
public final class LightPhoto {
  private final CropBook book;
  private final PhotoFacts facts;

  private LightPhoto(CropBook book, PhotoFacts facts) {
    this.book = book;
    this.facts = facts;
  }

  /**
   * What came of it.
   *
   * @param image the upright photo, where it can be read
   * @param boards its boards; held ones are left out
   * @param refused why there is none, or empty
   * @param remedy what to do about that, or empty
   */
  public record Result(
      Optional<RgbImage> image, List<LitBoard> boards, String refused, String remedy) {

    /** Copies the list. */
    public Result {
      boards = List.copyOf(boards);
    }
  }

  /**
   * Finds a photo's boards and evens the light on them.
   *
   * @param bytes of the photo's file
   * @param facts what else is known of it
   * @param book the crop book
   * @return its boards, or why there is none
   */
  public static Result light(byte[] bytes, PhotoFacts facts, CropBook book) {
    return new LightPhoto(book, facts).light(bytes);
  }

  private Result light(byte[] bytes) {
    DecodeResult decoded = DecodePhoto.decode(bytes);
    if (decoded instanceof UnreadablePhoto bad) {
      return refused(bad.reason(), bad.remedy());
    }
    DecodedPhoto photo = (DecodedPhoto) decoded;
    PhotoName name = FactsOfName.of(book, facts.photo());
    StationOf.Answer station = StationOf.photo(book, facts, name);
    if (station.station().isEmpty()) {
      return refused(station.reason(), station.remedy());
    }
    TimeResult time =
        CaptureTime.of(
            new TimeClues(facts.takenAt(), photo.tags(), name),
            new FarmClock(book.farmDay(), station.station().get().clockOffset(), Optional.empty()));
    if (time instanceof NoTime none) {
      return refused(none.reason(), none.remedy());
    }
    TakenAt taken = (TakenAt) time;
    return boards(
        photo,
        new PhotoStory.Scene(
            station.station().get(), book.farmDay().evening(taken.at().toInstant()), taken.at()));
  }

  private Result boards(DecodedPhoto photo, PhotoStory.Scene scene) {
    FoundBoards found =
        new BoardsOfPhoto(book, facts, FactsOfName.of(book, facts.photo())).find(photo, scene);
    EdgeBlur blur = EdgeBlur.of(photo.image(), found.boards());
    PhotoViews views = PhotoViews.of(photo.image(), Optional.empty(), blur);
    MeasureBoard measure = new MeasureBoard(book, views, scene);
    List<LitBoard> boards = new ArrayList<>();
    for (Optional<MeasureBoard.Lit> lit : SharedLight.among(found.boards(), measure)) {
      lit.ifPresent(l -> boards.add(board(l, measure)));
    }
    return boards.isEmpty()
        ? refused("no board can be told in it", "choose a photo whose boards are measured")
        : new Result(Optional.of(photo.image()), boards, "", "");
  }

  private static LitBoard board(MeasureBoard.Lit lit, MeasureBoard measure) {
    FoundBoard board = lit.board();
    return new LitBoard(
        board.layout(), board.pose(), lit.deck(), lit.light(), measure.onOpenGround(board));
  }

  private static Result refused(String why, String remedy) {
    return new Result(Optional.empty(), List.of(), why, remedy);
  }
}
