// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * One term of the linear model of {@code ln w}: a product of logarithms of sizes, for all varieties
 * or one of them.
 *
 * @param sizes the sizes whose logarithms are multiplied; none is the constant
 * @param variety the variety that it holds for (0 for others), or nothing for all
 */
public record Term(List<Size> sizes, Optional<String> variety) {
  private static final String TIMES = " * ";
  private static final String ONLY = " of ";

  /** Copies the sizes, in their order. */
  public Term {
    List<Size> sorted = new ArrayList<>(sizes);
    Collections.sort(sorted);
    sizes = List.copyOf(sorted);
  }

  /**
   * Describes a term of all varieties.
   *
   * @param sizes the sizes; none for the constant
   * @return the term
   */
  public static Term of(Size... sizes) {
    return new Term(List.of(sizes), Optional.empty());
  }

  /**
   * Restricts it to one variety.
   *
   * @param name of the variety
   * @return the term
   */
  public Term onlyFor(String name) {
    return new Term(sizes, Optional.of(name));
  }

  /**
   * Returns the term's value for a plant.
   *
   * @param traits of the plant
   * @return the product of logarithms, 0 for another variety; nothing where a size is not known
   */
  public OptionalDouble value(Traits traits) {
    double product = 1;
    for (Size size : sizes) {
      OptionalDouble value = size.of(traits);
      if (value.isEmpty()) {
        return OptionalDouble.empty();
      }
      product *= Math.log(value.getAsDouble());
    }
    boolean other = variety.isPresent() && !variety.get().equals(traits.variety());
    return OptionalDouble.of(other ? 0 : product);
  }

  /** Returns the term in words that {@link #parse} reads back, such as {@code ln area_cm2}. */
  @Override
  public String toString() {
    String product =
        sizes.isEmpty()
            ? "1"
            : sizes.stream().map(s -> "ln " + s.column()).collect(Collectors.joining(TIMES));
    return product + variety.map(v -> ONLY + v).orElse("");
  }

  /**
   * Reads a term.
   *
   * @param text as {@link #toString} writes it
   * @return the term, or nothing if it is not one
   */
  public static Optional<Term> parse(String text) {
    int only = text.indexOf(ONLY);
    String product = only < 0 ? text : text.substring(0, only);
    Optional<String> variety =
        only < 0 ? Optional.empty() : Optional.of(text.substring(only + ONLY.length()));
    List<Size> sizes = new ArrayList<>();
    if (!product.equals("1")) {
      for (String factor : product.split(" \\* ", -1)) {
        Optional<Size> size =
            List.of(Size.values()).stream()
                .filter(s -> factor.equals("ln " + s.column()))
                .findFirst();
        if (size.isEmpty()) {
          return Optional.empty();
        }
        sizes.add(size.get());
      }
    }
    return Optional.of(new Term(sizes, variety));
  }

  /**
   * Returns the row of a model's design for a plant.
   *
   * @param terms of the model
   * @param traits of the plant
   * @return a value for each term, or nothing where a size is not known
   */
  static Optional<double[]> row(List<Term> terms, Traits traits) {
    double[] row = new double[terms.size()];
    for (int i = 0; i < row.length; i++) {
      OptionalDouble value = terms.get(i).value(traits);
      if (value.isEmpty()) {
        return Optional.empty();
      }
      row[i] = value.getAsDouble();
    }
    return Optional.of(row);
  }
}
