// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.EvenedLight;
import org.raftgauge.core.canopy.TeachingGround;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.problem.Problem;

/** Teaching on drawn open ground whose labels are known pixel by pixel. */
class TeachingTest {
  private static final int WIDTH = 240;
  private static final int HEIGHT = 180;

  /** A photo of ground with leaves of a colour; labels as drawn, or all wrong way round. */
  private static Lesson lesson(String name, TeachingGround drawn, boolean swapped) {
    int[] colours = new int[WIDTH * HEIGHT];
    for (int i = 0; i < colours.length; i++) {
      boolean leaf = drawn.isLeaf(i) != swapped;
      colours[i] = (leaf ? Tissue.PALE : Tissue.BOARD).rgb();
    }
    return Lesson.of(name, List.of(board(drawn)), Labels.read(LabelsTest.picture(WIDTH, colours)));
  }

  private static LitBoard board(TeachingGround drawn) {
    Layout layout = TeachingGround.layout(new Board(WIDTH, HEIGHT));
    return new LitBoard(layout, drawn.pose(), drawn.deck(), EvenedLight.ofCamera(), true);
  }

  private static List<Lesson> lessons() {
    List<Lesson> lessons = new ArrayList<>();
    for (int n = 0; n < 4; n++) {
      lessons.add(lesson("p" + n + ".png", TeachingGround.dullLeaves(WIDTH, HEIGHT, n), false));
    }
    return lessons;
  }

  private static List<String> refusal(List<Lesson> lessons) {
    Teaching.Outcome outcome = Teaching.teach("m", lessons);
    return ((Teaching.Refused) outcome).problems().stream().map(Problem::toString).toList();
  }

  @Test
  void yellowGreenLeafIsTaughtAndFoundOnPhotosNotSeen() {
    Teaching.Taught taught = (Teaching.Taught) Teaching.teach("m", lessons());
    CrossValidation check = taught.check();
    assertEquals(4, check.folds());
    assertEquals(4, check.photos().size());
    // Half a pixel of rim about leaves of 14 to 30 px is 5 % of their area.
    assertTrue(check.meanDice() > 0.93, "Dice " + check.meanDice());
    assertTrue(check.photos().get(0).dice() <= check.photos().get(3).dice(), "worst first");
    assertTrue(check.share(Tissue.PALE, Tissue.PALE) > 0.9);
    assertEquals(
        1, check.share(Tissue.BOARD, Tissue.PALE) + check.share(Tissue.BOARD, Tissue.BOARD), 1e-9);
    assertTrue(check.calibrationError() < 0.05, "calibration " + check.calibrationError());
    double all =
        check.calibration().stream().mapToDouble(CrossValidation.Bin::weightFraction).sum();
    assertEquals(1, all, 1e-9);
    assertTrue(taught.model().ground().isPresent());
    assertEquals(WIDTH, check.photos().get(0).wrong().get(0).width());
  }

  @Test
  void theSameLessonsTeachTheSameModel() {
    assertEquals(FitColour.to("m", lessons()), FitColour.to("m", lessons()));
  }

  @Test
  void onePictureIsTooLittle() {
    assertEquals(
        List.of(
            "labelled pictures: there is only 1; label at least 2, better 8: each is judged by the"
                + " others"),
        refusal(lessons().subList(0, 1)));
  }

  @Test
  void picturesWithoutLeafOrWithoutAnythingElseAreRefused() {
    List<Lesson> bare = new ArrayList<>();
    List<Lesson> full = new ArrayList<>();
    for (int n = 0; n < 2; n++) {
      TeachingGround drawn = TeachingGround.dullLeaves(WIDTH, HEIGHT, n);
      bare.add(painted(drawn, Tissue.BOARD.rgb(), 0));
      full.add(painted(drawn, Tissue.GREEN.rgb(), 0));
    }
    assertEquals(
        List.of(
            "labelled pictures: no leaf is painted on any board; paint some of it as green, red,"
                + " pale or dead"),
        refusal(bare));
    assertEquals(
        List.of(
            "labelled pictures: no what is not leaf is painted on any board; paint some of it as"
                + " board, dark or algae"),
        refusal(full));
  }

  /** A photo painted in one colour, but for some pixels of dead leaf in a corner. */
  private static Lesson painted(TeachingGround drawn, int colour, int dead) {
    int[] colours = new int[WIDTH * HEIGHT];
    Arrays.fill(colours, colour);
    Arrays.fill(colours, 0, dead, Tissue.DEAD.rgb());
    return Lesson.of(
        "x.png", List.of(board(drawn)), Labels.read(LabelsTest.picture(WIDTH, colours)));
  }

  @Test
  void aTissueOfAFewPixelsIsRefused() {
    List<Lesson> lessons = new ArrayList<>(lessons());
    lessons.add(painted(TeachingGround.dullLeaves(WIDTH, HEIGHT, 9), Tissue.BOARD.rgb(), 40));
    List<String> problems = refusal(lessons);
    assertEquals(1, problems.size());
    assertEquals(
        "tissue dead: only 40 pixels on boards are painted so; paint at least 100, or leave them"
            + " out in magenta",
        problems.get(0));
  }

  @Test
  void picturesThatContradictEachOtherAreRefusedAndTheWorstIsNamed() {
    List<Lesson> lessons = new ArrayList<>();
    for (int n = 0; n < 4; n++) {
      TeachingGround drawn = TeachingGround.dullLeaves(WIDTH, HEIGHT, n);
      lessons.add(lesson("p" + n + ".png", drawn, n % 2 == 1));
    }
    List<String> problems = refusal(lessons);
    assertEquals(1, problems.size());
    assertTrue(
        problems.get(0).startsWith("labelled pictures: they contradict each other: "),
        problems.get(0));
    assertTrue(problems.get(0).contains("look first at the one of p"), problems.get(0));
  }

  @Test
  void aPaintingOfAnotherSizeOrInOtherColoursIsRefused() {
    Labels grey = Labels.read(LabelsTest.picture(2, 0x7F7F7F, 0xFFFFFF));
    List<String> problems =
        Teaching.check("a.png", grey, LabelsTest.picture(1, 0, 0)).stream()
            .map(Problem::toString)
            .toList();
    assertEquals(
        List.of(
            "a.png: the painted picture is 2 x 1 px, its photo 1 x 2 px (upright); paint on a"
                + " picture made with --start, and save it in its own size",
            "a.png: 50.0 % of its pixels are in no colour of the palette; paint with a hard brush,"
                + " without soft edges, and save as PNG; leave out what you do not know in"
                + " magenta"),
        problems);
    Labels good = Labels.read(LabelsTest.picture(1, 0xFFFFFF, 0xFFFFFF));
    assertEquals(List.of(), Teaching.check("a.png", good, LabelsTest.picture(1, 0, 0)));
  }
}
