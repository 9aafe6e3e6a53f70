// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import boofcv.abst.fiducial.QrCodeDetector;
import boofcv.factory.fiducial.FactoryFiducial;
import boofcv.struct.image.GrayU8;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import nu.pattern.OpenCV;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.objdetect.ArucoDetector;
import org.opencv.objdetect.DetectorParameters;
import org.opencv.objdetect.Objdetect;

final class RenderSetTest {

  private static PhotoPlan plan(StationPlan station, Stage stage) {
    return new PhotoPlan(0, Condition.PLAIN, CropKind.BUTTERHEAD, stage, station, 42);
  }

  @Test
  void theSameSeedGivesTheSameBytes(@TempDir Path one, @TempDir Path two) throws IOException {
    SetName.Order order = new SetName.Order(4, 2, 0.3);
    RenderSet.make(one, SetName.CONDITIONS, order, path -> {});
    RenderSet.make(two, SetName.CONDITIONS, order, path -> {});
    List<Path> files;
    try (Stream<Path> walk = Files.walk(one)) {
      files = walk.filter(Files::isRegularFile).map(one::relativize).sorted().toList();
    }
    // 2 photos, 2 labels, 2 coverages, manifest, truth, poses, book: 6 files or more
    assertTrue(files.size() >= 15, "only " + files);
    for (Path file : files) {
      byte[] expected = Files.readAllBytes(one.resolve(file));
      assertArrayEquals(expected, Files.readAllBytes(two.resolve(file)), file.toString());
    }
  }

  @Test
  void theConditionsSetCoversEveryCombination() {
    List<PhotoPlan> plans = SetName.CONDITIONS.plan(new SetName.Order(1, Integer.MAX_VALUE, 1));
    Set<String> codes = new HashSet<>();
    for (Condition condition : Condition.values()) {
      List<PhotoPlan> mine = plans.stream().filter(p -> p.condition() == condition).toList();
      // three habits, three stages, two kinds of station; empty and full rafts have one stage
      boolean single = condition == Condition.EMPTY || condition == Condition.FULL;
      assertEquals(single ? 6 : 18, mine.size(), condition.label());
      mine.forEach(p -> assertTrue(codes.add(p.code()), "twice: " + p.code()));
    }
  }

  @Test
  void noRaftIdIsTooLongForATag() {
    for (PhotoPlan plan : SetName.CONDITIONS.plan(new SetName.Order(1, Integer.MAX_VALUE, 1))) {
      // 20 characters of the alphanumeric mode fit version 1 at level M (ISO/IEC 18004, table 7)
      assertTrue(plan.raft(0).matches("[A-Z0-9-]{1,20}"), plan.raft(0));
    }
  }

  @Test
  void aPassingPhotoShowsItsMarkersAndItsTag(@TempDir Path out) throws IOException {
    PhotoPlan plan = plan(StationPlan.passing(1, 2.5), Stage.YOUNG);
    MakePhoto.make(plan, out);
    BufferedImage photo = ImageIO.read(out.resolve("photos").resolve(plan.path()).toFile());
    byte[] grey = grey(photo);
    Set<Integer> ids = markers(grey, photo.getWidth(), photo.getHeight());
    assertEquals(Set.of(0, 1, 2, 3), ids);
    assertTrue(tags(grey, photo.getWidth(), photo.getHeight()).contains(plan.raft(0)));
  }

  @Test
  void theLabelPictureNamesEveryPlantedSiteOfTheTruth(@TempDir Path out) throws IOException {
    PhotoPlan plan = plan(StationPlan.fixed(0.6), Stage.MIDDLE);
    MakePhoto.Made made = MakePhoto.make(plan, out);
    BufferedImage labels = ImageIO.read(out.resolve("labels").resolve(plan.pngPath()).toFile());
    Set<Integer> seen = new TreeSet<>();
    for (int y = 0; y < labels.getHeight(); y++) {
      for (int x = 0; x < labels.getWidth(); x++) {
        seen.add(labels.getRaster().getSample(x, y, 0));
      }
    }
    seen.remove(0);
    seen.remove(65_535);
    Set<Integer> planted = new TreeSet<>();
    made.sites().stream()
        .filter(site -> site.truth().projectedAreaCm2() > 0)
        .forEach(site -> planted.add(site.label()));
    assertEquals(planted, seen);
    assertEquals(54, made.sites().size());
  }

  private static byte[] grey(BufferedImage photo) {
    byte[] grey = new byte[photo.getWidth() * photo.getHeight()];
    for (int i = 0; i < grey.length; i++) {
      int row = i / photo.getWidth();
      grey[i] = (byte) (photo.getRGB(i % photo.getWidth(), row) >> 8);
    }
    return grey;
  }

  private static Set<Integer> markers(byte[] grey, int width, int height) {
    OpenCV.loadLocally();
    Mat image = new Mat(height, width, CvType.CV_8UC1);
    image.put(0, 0, grey);
    Mat ids = new Mat();
    List<Mat> corners = new ArrayList<>();
    new ArucoDetector(
            Objdetect.getPredefinedDictionary(Objdetect.DICT_APRILTAG_36h11),
            new DetectorParameters())
        .detectMarkers(image, corners, ids);
    Set<Integer> found = new TreeSet<>();
    for (int i = 0; i < ids.rows(); i++) {
      found.add((int) ids.get(i, 0)[0]);
    }
    corners.forEach(Mat::release);
    ids.release();
    image.release();
    return found;
  }

  private static List<String> tags(byte[] grey, int width, int height) {
    GrayU8 image = new GrayU8(width, height);
    image.data = grey;
    QrCodeDetector<GrayU8> detector = FactoryFiducial.qrcode(null, GrayU8.class);
    detector.process(image);
    return detector.getDetections().stream().map(code -> code.message).toList();
  }
}
