// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.SiteNames;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;

/** The words are tried on a sample photo and on what can go wrong with it. */
class AtTheStationTest {
  private static final Path SAMPLES = Path.of("..", "sample-images");
  private static final String NAME = "2026-03-06_KV-112.jpg";

  private static BufferedImage photo() throws IOException {
    return ImageIO.read(SAMPLES.resolve("photos/2026-03-06/" + NAME).toFile());
  }

  private static Signal told(BufferedImage photo, String name) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(photo, "png", bytes);
    CropBook book = CropBook.read(SAMPLES.resolve("book")).book();
    return AtTheStation.of(
        MeasurePhoto.measure(bytes.toByteArray(), PhotoFacts.of(name), book).measure(),
        (raft, measure) -> sites("A1-E4"));
  }

  private static BufferedImage changed(IntUnaryOperator pixel) throws IOException {
    BufferedImage from = photo();
    BufferedImage to = new BufferedImage(from.getWidth(), from.getHeight(), 1);
    for (int y = 0; y < from.getHeight(); y++) {
      for (int x = 0; x < from.getWidth(); x++) {
        to.setRGB(x, y, pixel.applyAsInt(from.getRGB(x, y)));
      }
    }
    return to;
  }

  @Test
  void aSoundPhotoIsGoodAndNamesTheRaft() throws IOException {
    Signal told = told(photo(), NAME);
    assertEquals(Signal.Kind.GOOD, told.kind(), told.toString());
    assertEquals("GOOD", told.word());
    assertTrue(told.advice().startsWith("KV-112: 20 sites"), told.advice());
  }

  @Test
  void aPhotoInTheDarkIsTooDark() throws IOException {
    Signal told =
        told(
            changed(
                p -> ((p >> 16 & 255) / 40) << 16 | ((p >> 8 & 255) / 40) << 8 | (p & 255) / 40),
            NAME);
    assertEquals("TOO DARK", told.word(), told.toString());
  }

  @Test
  void aPhotoWithoutColourSaysSo() throws IOException {
    Signal told =
        told(
            changed(
                p -> {
                  int grey = ((p >> 16 & 255) + 2 * (p >> 8 & 255) + (p & 255)) / 4;
                  return grey << 16 | grey << 8 | grey;
                }),
            NAME);
    assertEquals("NO COLOUR", told.word(), told.toString());
  }

  @Test
  void aBoardHalfOutOfThePictureIsSaid() throws IOException {
    BufferedImage from = photo();
    BufferedImage to = new BufferedImage(from.getWidth(), from.getHeight(), 1);
    Graphics2D pen = to.createGraphics();
    pen.setColor(new Color(60, 70, 75));
    pen.fillRect(0, 0, to.getWidth(), to.getHeight());
    pen.drawImage(from, 0, -to.getHeight() / 4, null);
    Signal told = told(to, NAME);
    assertEquals(Signal.Kind.ACT, told.kind(), told.toString());
    assertTrue(told.word().equals("CUT OFF") || told.word().equals("NO RAFT"), told.toString());
  }

  @Test
  void anUnknownNameIsAskedFor() throws IOException {
    PhotoMeasure unnamed = measured("rafts=?");
    assertEquals("WHICH RAFT", AtTheStation.of(unnamed, (r, p) -> sites("A1-B2")).word());
    PhotoMeasure unplanted = measured("rafts=R9");
    Signal told = AtTheStation.of(unplanted, (r, p) -> Optional.empty());
    assertEquals("NOT IN BOOK", told.word());
    assertEquals("raft R9 has no planting: add it to plantings.csv", told.advice());
    PhotoMeasure unread = measured("rafts=R1 note=its_tag_was_not_read");
    Signal named = AtTheStation.of(unread, (r, p) -> sites("A1-B2"));
    assertEquals("TAG UNREAD", named.word());
    // Leaves of a grown raft cover its tag every evening: then there is nothing to take again.
    assertEquals(
        "measured as R1, by its file's name or the manifest: go on if that is right; else lift the"
            + " leaves off its tag, or clean it, and take it again",
        named.advice());
  }

  @Test
  void whatHasNoWordOfItsOwnIsTakenAgainWithReasonAndRemedy() {
    Signal told =
        AtTheStation.of(
            measured("status=refused reason=a_hose_lies_on_it remedy=take_it_off"),
            (r, p) -> sites("A1-B2"));
    assertEquals(new Signal(Signal.Kind.ACT, "TAKE AGAIN", "a hose lies on it; take it off"), told);
  }

  @Test
  void aPlantThatIsTooDarkIsSaidThoughMostAreMeasured() {
    PhotoMeasure dusk = measured("rafts=R1 dark=B2");
    Signal told = AtTheStation.of(dusk, (r, p) -> sites("A1-B2"));
    assertEquals("TOO DARK", told.word());
    assertEquals(
        "R1: 1 of 4 sites held: it is too dark to tell so small a plant from the board",
        told.advice());
    assertEquals(
        new Signal(Signal.Kind.GOOD, "GOOD", "R1: 3 sites"),
        AtTheStation.of(dusk, (r, p) -> sites("A1;A2;B1")),
        "no plant stands on B2");
  }

  private static Optional<Set<SiteId>> sites(String names) {
    return Optional.of(SiteNames.parse(names));
  }

  private static PhotoMeasure measured(String text) {
    return new HandMadeMeasurer("s")
        .measure(text.getBytes(StandardCharsets.UTF_8), PhotoFacts.of("a.txt"))
        .measure();
  }
}
