// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Patch;
import org.raftgauge.proving.solid.Placement;

/** Everything before the camera, with the plants in one mesh. */
public final class Scene {
  private final List<Raft> rafts;
  private final List<RaftFace> faces = new ArrayList<>();
  private final List<Slip> slips;
  private final Pond pond;
  private final Mesh mesh = new Mesh();

  /**
   * Puts a scene together.
   *
   * @param rafts the boards; they do not overlap
   * @param slips tape and cards, the first on top
   * @param pond what lies around and under the boards
   * @param things hoses and cables, in world mm
   */
  public Scene(List<Raft> rafts, List<Slip> slips, Pond pond, Mesh things) {
    this.rafts = List.copyOf(rafts);
    this.slips = List.copyOf(slips);
    this.pond = pond;
    for (Raft raft : rafts) {
      faces.add(new RaftFace(raft));
      plant(raft);
    }
    mesh.append(things, Placement.NONE, 0);
  }

  private void plant(Raft raft) {
    for (int i = 0; i < raft.sites().size(); i++) {
      Sown sown = raft.sites().get(i);
      int label = raft.measured() ? raft.firstLabel() + i : Patch.FOREIGN;
      sown.plant().ifPresent(plant -> mesh.append(plant, foot(raft, sown), label));
    }
  }

  /**
   * Returns where a site's plant stands in the world, turned with its raft.
   *
   * @param raft the raft
   * @param sown the site
   * @return the place
   */
  public static Placement foot(Raft raft, Sown sown) {
    PointMm centre = raft.layout().grid().centre(sown.site());
    Placement place = raft.place();
    return new Placement(
        place.worldX(centre.xMm(), centre.yMm()),
        place.worldY(centre.xMm(), centre.yMm()),
        place.turnRad());
  }

  /** Returns the boards. */
  public List<Raft> rafts() {
    return rafts;
  }

  /** Returns the slips. */
  public List<Slip> slips() {
    return slips;
  }

  /** Returns the pond. */
  public Pond pond() {
    return pond;
  }

  /** Returns all plants and things in world mm; each plant's tissue owned by its site's label. */
  public Mesh mesh() {
    return mesh;
  }

  /**
   * Returns what the deck plane shows at a place.
   *
   * @param x world mm
   * @param y world mm
   * @return face and index, packed; {@link Face#of} and {@link Face#index} unpack it
   */
  public int faceAt(double x, double y) {
    for (int i = 0; i < faces.size(); i++) {
      if (faces.get(i).covers(x, y)) {
        return onBoard(i, x, y);
      }
    }
    return Face.OPEN.code(0);
  }

  private int onBoard(int raft, double x, double y) {
    for (int i = 0; i < slips.size(); i++) {
      if (slips.get(i).covers(x, y)) {
        return Face.SLIP.code(i);
      }
    }
    RaftFace face = faces.get(raft);
    return face.at(face.boardX(x, y), face.boardY(x, y)).code(raft);
  }
}
