// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;

/**
 * The colour models that come with the program: those built in by rules, and those taught from its
 * own rendered pictures, each a plain file that says where it is from and what it was tried on.
 */
public final class ShippedColours {
  /** Models by rules. */
  static final List<String> BY_RULES = List.of("green-leaf", "red-leaf");

  /** Taught models; each has a file of its name beside this class. */
  static final List<String> TAUGHT = List.of("green-leaf-taught", "red-leaf-taught");

  private ShippedColours() {}

  /**
   * Says whether a model of a name comes with the program.
   *
   * @param name as crops name it
   * @return whether a book may have none of that name
   */
  public static boolean has(String name) {
    return BY_RULES.contains(name) || TAUGHT.contains(name);
  }

  /** Reads the taught ones. */
  static Map<String, Optional<TaughtColour>> taught() {
    Map<String, Optional<TaughtColour>> models = new LinkedHashMap<>();
    for (String name : TAUGHT) {
      Findings findings = new Findings();
      Optional<TaughtColour> model = ColourReader.parse(name, text(name + ".yaml"), findings);
      if (model.isEmpty()) {
        throw new IllegalStateException("broken program: " + findings.list());
      }
      models.put(name, model);
    }
    return models;
  }

  private static String text(String file) {
    try (InputStream in = ShippedColours.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("broken program: " + file + " is missing");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("broken program: " + file + " cannot be read", e);
    }
  }
}
