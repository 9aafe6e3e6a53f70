// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import org.raftgauge.proving.plant.Habit;
import org.raftgauge.proving.plant.Tone;

/** The crops of the proving sets. */
public enum CropKind {
  /** Butterhead lettuce. */
  BUTTERHEAD("butterhead", Habit.BUTTERHEAD, Tone.LIGHT_GREEN),
  /** Butterhead lettuce with red leaves. */
  RED_BUTTERHEAD("red-butterhead", Habit.BUTTERHEAD, Tone.RED),
  /** Oak-leaf lettuce. */
  OAKLEAF("oakleaf", Habit.OAKLEAF, Tone.GREEN),
  /** Oak-leaf lettuce with red leaves. */
  RED_OAKLEAF("red-oakleaf", Habit.OAKLEAF, Tone.RED),
  /** Basil. */
  BASIL("basil", Habit.BASIL, Tone.DARK_GREEN),
  /** Basil with purple leaves. */
  PURPLE_BASIL("purple-basil", Habit.BASIL, Tone.PURPLE),
  /** Romaine lettuce. */
  ROMAINE("romaine", Habit.ROMAINE, Tone.GREEN),
  /** Rocket. */
  ROCKET("rocket", Habit.ROCKET, Tone.DARK_GREEN),
  /** Seedlings. */
  SEEDLING("seedling", Habit.SEEDLING, Tone.LIGHT_GREEN);

  private final String crop;
  private final Habit habit;
  private final Tone tone;

  CropKind(String crop, Habit habit, Tone tone) {
    this.crop = crop;
    this.habit = habit;
    this.tone = tone;
  }

  /** Returns the crop's name in the book. */
  public String crop() {
    return crop;
  }

  /** Returns the leaf habit. */
  public Habit habit() {
    return habit;
  }

  /** Returns the colour of a sound plant. */
  public Tone tone() {
    return tone;
  }

  /** Returns the name of the built-in colour model. */
  public String colourModel() {
    return tone == Tone.RED || tone == Tone.PURPLE ? "red-leaf" : "green-leaf";
  }
}
