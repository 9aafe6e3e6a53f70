// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.render.Develop;
import org.raftgauge.proving.render.Exposure;
import org.raftgauge.proving.render.RenderPhoto;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.truth.MeasureTruth;
import org.raftgauge.proving.truth.PlantTruth;

/** Makes one photo of a plan with everything that goes with it. */
final class MakePhoto {

  private MakePhoto() {}

  /**
   * A made photo.
   *
   * @param plan its plan
   * @param camera where its camera was
   * @param rafts the measured rafts
   * @param sites the truth about their sites
   */
  record Made(PhotoPlan plan, Camera camera, List<Raft> rafts, List<SitePoint> sites) {}

  /** Makes a photo and writes it, its labels and its coverage under a folder. */
  static Made make(PhotoPlan plan, Path out) throws IOException {
    Random random = new Random(plan.seed());
    Look drawn = Looks.draw(plan.condition(), random);
    Look look = plan.filling().map(f -> drawn.in(f.medium())).orElse(drawn);
    Scene scene = Arrange.scene(plan, look, random);
    Camera camera = plan.station().camera(look.tiltDeg(), random);
    Exposure view = RenderPhoto.render(scene, camera, look.light());
    PictureFiles.writeLabels(view, out.resolve("labels").resolve(plan.pngPath()));
    PictureFiles.writeCoverage(view, out.resolve("coverage").resolve(plan.pngPath()));
    RgbImage photo = Develop.develop(view, look.shot());
    int quality = look.shot().finish().jpegQuality();
    PictureFiles.writeJpeg(photo, out.resolve("photos").resolve(plan.path()), quality);
    List<Raft> rafts = scene.rafts().stream().filter(Raft::measured).toList();
    return new Made(plan, camera, rafts, sites(plan, rafts, MeasureTruth.measure(scene.mesh())));
  }

  private static List<SitePoint> sites(
      PhotoPlan plan, List<Raft> rafts, Map<Integer, PlantTruth> truths) {
    List<SitePoint> points = new ArrayList<>();
    for (Raft raft : rafts) {
      for (int i = 0; i < raft.sites().size(); i++) {
        Sown sown = raft.sites().get(i);
        int label = raft.firstLabel() + i;
        PlantTruth truth = truths.getOrDefault(label, PlantTruth.NONE);
        points.add(
            new SitePoint(plan, raft.id(), sown.site().toString(), label, sown.kind(), truth));
      }
    }
    return points;
  }
}
