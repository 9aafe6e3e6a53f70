// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/** Units of the reports for people; files for programs are always metric. */
public enum Units {
  /** Grams, kilograms, square centimetres, degrees Celsius. */
  METRIC,
  /** Ounces, pounds, square inches, degrees Fahrenheit. */
  IMPERIAL
}
