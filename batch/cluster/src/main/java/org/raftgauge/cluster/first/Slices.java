// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.util.ArrayList;
import java.util.List;

/** Cuts a list of photos into partitions of about the same work. */
public final class Slices {
  /** What a photo costs whatever its size: to open it, and to find boards in it. */
  private static final long EACH_BYTES = 256 << 10;

  private Slices() {}

  /**
   * Cuts.
   *
   * @param photos in order
   * @param slices most partitions, 1 or more
   * @return that many or fewer runs of the list, none of them empty
   */
  public static List<List<Listed>> of(List<Listed> photos, int slices) {
    long all = photos.stream().mapToLong(Slices::work).sum();
    List<List<Listed>> cut = new ArrayList<>();
    List<Listed> slice = new ArrayList<>();
    long done = 0;
    for (Listed photo : photos) {
      slice.add(photo);
      done += work(photo);
      if (done * slices >= all * (cut.size() + 1)) {
        cut.add(slice);
        slice = new ArrayList<>();
      }
    }
    if (!slice.isEmpty()) {
      cut.add(slice);
    }
    return cut;
  }

  /**
   * Returns the number of partitions that makes each of them take a minute or so.
   *
   * @param photos the photos
   * @param cores task slots of the cluster
   * @param mostBytes most bytes a partition
   * @return at least four a core, as far as there are photos
   */
  public static int count(List<Listed> photos, int cores, long mostBytes) {
    long all = photos.stream().mapToLong(Slices::work).sum();
    long most = Math.max(4L * cores, (all + mostBytes - 1) / mostBytes);
    return (int) Math.max(1, Math.min(photos.size(), most));
  }

  private static long work(Listed photo) {
    return EACH_BYTES + photo.bytes();
  }
}
