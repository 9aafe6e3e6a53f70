// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/**
 * The names of one kind that a book gives, those too of parts that cannot be used.
 *
 * @param names the names in order
 * @param whole whether these are all; where a file could not be read, no name can be called unknown
 */
public record Known(List<String> names, boolean whole) {

  /** Keeps what are names; where one is none, what it was meant for is not known. */
  public Known {
    List<String> sound = names.stream().filter(Names::isName).toList();
    whole = whole && sound.size() == names.size();
    names = sound;
  }

  /**
   * Says whether a name is certainly none of these.
   *
   * @param name any name
   * @return false also where some names could not be read
   */
  public boolean lacks(String name) {
    return whole && !names.contains(name);
  }
}
