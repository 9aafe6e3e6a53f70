// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.batch.folder.FindPhotos;
import org.raftgauge.batch.folder.PhotoFolder;
import org.raftgauge.core.calibrate.CalibrationTarget;
import org.raftgauge.core.calibrate.FindTarget;
import org.raftgauge.core.calibrate.LensReport;
import org.raftgauge.core.calibrate.TargetSighting;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodeResult;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.photo.UnreadablePhoto;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Photos of a calibration target, looked at one by one: only one is in memory at a time. */
public final class TargetPhotos {
  private final List<TargetSighting> sightings = new ArrayList<>();
  private final List<LensReport.LeftOut> unreadable = new ArrayList<>();

  private TargetPhotos() {}

  /**
   * Looks at photos.
   *
   * @param paths photo files, and folders of photos
   * @param target what they show
   * @return what was seen
   * @throws InputException if a path does not exist or there is no photo
   * @throws IOException if a file cannot be read
   */
  public static TargetPhotos look(List<Path> paths, CalibrationTarget target)
      throws InputException, IOException {
    TargetPhotos photos = new TargetPhotos();
    for (Path file : files(paths)) {
      photos.look(file, target);
    }
    return photos;
  }

  /**
   * Sees that there are photos before anything is looked at.
   *
   * @param paths photo files, and folders of photos
   * @throws InputException if a path does not exist or there is no photo
   * @throws IOException if a folder cannot be read
   */
  public static void check(List<Path> paths) throws InputException, IOException {
    files(paths);
  }

  /** Returns what the readable photos show. */
  public List<TargetSighting> sightings() {
    return List.copyOf(sightings);
  }

  /** Returns the files that are no photos. */
  public List<LensReport.LeftOut> unreadable() {
    return List.copyOf(unreadable);
  }

  private void look(Path file, CalibrationTarget target) throws IOException {
    String name = file.getFileName().toString();
    DecodeResult decoded = DecodePhoto.decode(Files.readAllBytes(file));
    if (decoded instanceof UnreadablePhoto bad) {
      unreadable.add(new LensReport.LeftOut(name, bad.reason()));
    } else if (decoded instanceof DecodedPhoto photo) {
      sightings.add(FindTarget.in(target, name, photo.image()));
    }
  }

  private static List<Path> files(List<Path> paths) throws InputException, IOException {
    List<Path> files = new ArrayList<>();
    for (Path path : paths) {
      if (Files.isDirectory(path)) {
        PhotoFolder folder = FindPhotos.in(path);
        folder.photos().forEach(photo -> files.add(folder.fileOf(photo)));
      } else if (Files.isRegularFile(path)) {
        files.add(path);
      } else {
        throw problem(path, "does not exist", "give photos of the target, or a folder of them");
      }
    }
    if (files.isEmpty()) {
      throw problem(paths.get(0), "holds no photos", "give photos of the target");
    }
    return files;
  }

  private static InputException problem(Path path, String found, String remedy) {
    return new InputException(List.of(new Problem("PHOTOS " + path, found, remedy)));
  }
}
