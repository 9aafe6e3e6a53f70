// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.ColourTerms;
import org.raftgauge.core.canopy.TaughtRule;

/** Fits a colour model to lessons. */
public final class FitColour {
  /** Colours rarer than this at either end do not widen the range. */
  private static final double TAIL = 0.001;

  private static final double LEAST_SPAN = 0.1;

  /** Weights stay near 10 at most; settled by cross-validation, flat within a factor of ten. */
  private static final double RIDGE = 1e-5;

  private final String name;
  private final List<Lesson.Pixel> pixels;

  private FitColour(String name, List<Lesson> lessons) {
    this.name = name;
    this.pixels = lessons.stream().flatMap(l -> l.pixels().stream()).toList();
  }

  /**
   * Fits a model.
   *
   * @param name of the model
   * @param lessons with leaf and something that is not leaf among them
   * @return the model; it knows open ground where one of the lessons shows some
   */
  public static TaughtColour to(String name, List<Lesson> lessons) {
    return new FitColour(name, lessons).fit();
  }

  private TaughtColour fit() {
    List<Lesson.Pixel> inner = pixels.stream().filter(p -> p.inner).toList();
    List<Double> least = new ArrayList<>();
    List<Double> most = new ArrayList<>();
    range(inner, least, most);
    TaughtColour colours =
        new TaughtColour(
            name, least, most, weights(inner, new ColourTerms(least, most)), Optional.empty());
    return new TaughtColour(
        name, least, most, colours.weights(), FitGround.to(pixels, new TaughtRule(colours)));
  }

  private static void range(List<Lesson.Pixel> inner, List<Double> least, List<Double> most) {
    for (int c = 0; c < 3; c++) {
      int coordinate = c;
      double[] values = inner.stream().mapToDouble(p -> p.colour[coordinate]).sorted().toArray();
      int tail = (int) (TAIL * values.length);
      double low = values[tail];
      least.add(low);
      most.add(Math.max(low + LEAST_SPAN, values[values.length - 1 - tail]));
    }
  }

  private static Map<Tissue, List<Double>> weights(List<Lesson.Pixel> inner, ColourTerms terms) {
    List<Tissue> tissues =
        Stream.of(Tissue.values())
            .filter(t -> inner.stream().anyMatch(p -> p.tissue == t))
            .toList();
    double[][] x = new double[inner.size()][TaughtColour.COLOUR_TERMS];
    int[] y = new int[x.length];
    double[] weight = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      Lesson.Pixel pixel = inner.get(i);
      terms.write(pixel.colour, x[i]);
      y[i] = tissues.indexOf(pixel.tissue);
      weight[i] = pixel.weight;
    }
    double[][] fitted = Softmax.fit(new Softmax.Sample(x, y, weight), tissues.size(), RIDGE);
    Map<Tissue, List<Double>> weights = new EnumMap<>(Tissue.class);
    for (int t = 0; t < fitted.length; t++) {
      weights.put(tissues.get(t), rounded(fitted[t]));
    }
    return weights;
  }

  /** Model files keep six digits. */
  static List<Double> rounded(double[] values) {
    return DoubleStream.of(values).map(v -> Math.rint(v * 1e4) / 1e4).boxed().toList();
  }
}
