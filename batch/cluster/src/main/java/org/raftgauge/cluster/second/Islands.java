// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.io.Serializable;
import java.util.HashMap;
import java.util.List;
import java.util.TreeSet;

/**
 * Groups of rafts that were ever seen together in a photo: what is settled between photos stays
 * within such a group. Where rafts pass a camera one by one each is a group of its own; the rafts
 * under a fixed camera are one.
 */
final class Islands implements Serializable {
  private static final long serialVersionUID = 1;

  /** Photos that show no raft by name are spread over so many groups. */
  private static final int NAMELESS = 64;

  private final HashMap<String, String> parents = new HashMap<>();
  private final HashMap<String, String> copies = new HashMap<>();
  private final HashMap<String, String> firsts = new HashMap<>();

  /** Notes that rafts were seen in one photo. */
  void together(List<String> rafts) {
    for (String raft : rafts) {
      join(rafts.get(0), raft);
    }
  }

  /** Notes of which photo the copies of some bytes are settled along. */
  void copies(String sha256, String photo, List<String> rafts) {
    copies.put(sha256, of(photo, "", rafts));
    firsts.put(sha256, photo);
  }

  /** Returns whether a photo is the first of those with its bytes. */
  boolean isFirst(String photo, String sha256) {
    return firsts.getOrDefault(sha256, photo).equals(photo);
  }

  /**
   * Returns the group of a photo.
   *
   * @param photo its path
   * @param sha256 of its bytes, or empty
   * @param rafts that it shows, as far as named
   * @return a name; photos of one name are settled together
   */
  String of(String photo, String sha256, List<String> rafts) {
    String copy = copies.get(sha256);
    if (copy != null) {
      return copy;
    }
    return rafts.isEmpty()
        ? "without raft " + Math.floorMod(photo.hashCode(), NAMELESS)
        : "raft " + root(new TreeSet<>(rafts).first());
  }

  private void join(String a, String b) {
    String left = root(a);
    String right = root(b);
    if (left.compareTo(right) < 0) {
      parents.put(right, left);
    } else if (!left.equals(right)) {
      parents.put(left, right);
    }
  }

  private String root(String raft) {
    String at = raft;
    while (parents.containsKey(at)) {
      at = parents.get(at);
    }
    return at;
  }
}
