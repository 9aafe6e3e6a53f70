// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Names;
import org.raftgauge.core.problem.Problem;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/**
 * Takes answers from options, and asks a person at a terminal for those that are missing, again
 * where an answer is none.
 */
final class Answers {
  private final CommandLine line;
  private final Console console;
  private BufferedReader in;

  Answers(CommandLine line, Console console) {
    this.line = line;
    this.console = console;
  }

  /**
   * Something to be told.
   *
   * @param option that tells it
   * @param question that asks for it
   * @param usual what a blank answer means; empty where there is no such thing
   */
  record Asked(String option, String question, String usual) {

    /** Makes a question that has to be answered. */
    static Asked of(String option, String question) {
      return new Asked(option, question, "");
    }
  }

  /** Reads an answer; throws {@link TypeConversionException} with what is allowed. */
  interface Reading<T> {
    T of(String answer);
  }

  /** Returns the option's answer, else a person's, else the usual one. */
  <T> T answer(Asked asked, String given, Reading<T> reading) throws IOException {
    if (given != null) {
      try {
        return reading.of(given.strip());
      } catch (TypeConversionException wrong) {
        throw new ParameterException(line, asked.option + ": " + wrong.getMessage());
      }
    }
    if (!console.terminal()) {
      if (asked.usual.isEmpty()) {
        throw new ParameterException(
            line,
            "Missing option "
                + asked.option
                + " ("
                + asked.question
                + "): nobody is there to be asked");
      }
      return reading.of(asked.usual);
    }
    while (true) {
      String answer = ask(asked.question + (asked.usual.isEmpty() ? "" : " [" + asked.usual + "]"));
      try {
        if (!answer.isBlank() || !asked.usual.isEmpty()) {
          return reading.of(answer.isBlank() ? asked.usual : answer.strip());
        }
      } catch (TypeConversionException wrong) {
        console.out().println("  " + wrong.getMessage());
      }
    }
  }

  /** Returns numbers above 0 that are parted by {@code x}; as many as asked for, or one more. */
  List<Double> sizes(Asked asked, String given, int fewest) throws IOException {
    return answer(asked, given, text -> sizes(text, fewest));
  }

  private static List<Double> sizes(String text, int fewest) {
    List<Double> sizes = new ArrayList<>();
    for (String part : text.split("\\s*[xX×]\\s*", -1)) {
      sizes.add(number(part));
    }
    if (sizes.size() < fewest || sizes.size() > 2) {
      throw wrong(text, fewest == 2 ? "two numbers, as in 600x1200" : "a number, as in 180");
    }
    return sizes;
  }

  /** Returns a whole number above 0. */
  int count(Asked asked, String given) throws IOException {
    return answer(asked, given, Answers::count);
  }

  private static int count(String text) {
    double value = number(text);
    if (value != Math.rint(value) || value > 1000) {
      throw wrong(text, "a whole number, as in 6");
    }
    return (int) value;
  }

  /** Returns a number above 0, or nothing where a person leaves it blank. */
  OptionalDouble maybe(Asked asked, String given) throws IOException {
    String left = "none";
    return answer(
        new Asked(asked.option, asked.question, left),
        given,
        text -> text.equals(left) ? OptionalDouble.empty() : OptionalDouble.of(number(text)));
  }

  /** Returns a name, as rafts, ponds and crops have. */
  String name(Asked asked, String given) throws IOException {
    return answer(asked, given, Answers::name);
  }

  /** Checks a name. */
  static String name(String text) {
    Problem problem = Names.problem("name", text).orElse(null);
    if (problem != null) {
      throw new TypeConversionException(problem.found() + "; " + problem.remedy());
    }
    return text;
  }

  private static double number(String text) {
    try {
      double value = Double.parseDouble(text);
      if (value > 0 && value < 1e6) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw wrong(text, "numbers above 0 with a dot, as in 12.5");
  }

  /** Says that an answer is none, and what is one. */
  static TypeConversionException wrong(String found, String allowed) {
    return new TypeConversionException("\"" + found + "\"; write " + allowed);
  }

  private String ask(String question) throws IOException {
    if (in == null) {
      in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    }
    console.out().print(question + ": ");
    console.out().flush();
    String answer = in.readLine();
    if (answer == null) {
      throw new ParameterException(line, "the answers end before \"" + question + "\"");
    }
    return answer;
  }
}
