// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Takes answers from options, and asks a person at a terminal for those that are missing. */
final class Answers {
  private final CommandLine line;
  private final Console console;
  private BufferedReader in;

  Answers(CommandLine line, Console console) {
    this.line = line;
    this.console = console;
  }

  /** Returns numbers above 0 that are parted by {@code x}; as many as asked for, or one more. */
  List<Double> sizes(String option, String given, String question, int fewest) throws IOException {
    String text = given == null ? ask(option, question) : given;
    List<Double> sizes = new ArrayList<>();
    for (String part : text.strip().split("\\s*[xX×]\\s*", -1)) {
      sizes.add(number(option, part));
    }
    if (sizes.size() < fewest || sizes.size() > 2) {
      throw wrong(
          option, text, fewest == 2 ? "two numbers, as in 600x1200" : "a number, as in 180");
    }
    return sizes;
  }

  /** Returns a whole number above 0. */
  int count(String option, String given, String question) throws IOException {
    String text = given == null ? ask(option, question) : given;
    double value = number(option, text.strip());
    if (value != Math.rint(value) || value > 1000) {
      throw wrong(option, text, "a whole number, as in 6");
    }
    return (int) value;
  }

  /** Returns a number above 0, or nothing where a person leaves it blank. */
  OptionalDouble maybe(String option, String given, String question) throws IOException {
    String text = given == null && console.terminal() ? askBlank(question) : given;
    return text == null || text.isBlank()
        ? OptionalDouble.empty()
        : OptionalDouble.of(number(option, text.strip()));
  }

  /** Returns a text; blank is the usual one. */
  String text(String option, String given, String question, String usual) throws IOException {
    if (given != null) {
      return given;
    }
    if (!console.terminal()) {
      return usual;
    }
    String answer = askBlank(question + " [" + usual + "]");
    return answer.isBlank() ? usual : answer.strip();
  }

  private double number(String option, String text) {
    try {
      double value = Double.parseDouble(text);
      if (value > 0 && value < 1e6) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw wrong(option, text, "numbers above 0 with a dot, as in 12.5");
  }

  private ParameterException wrong(String option, String found, String allowed) {
    return new ParameterException(line, option + ": \"" + found + "\"; write " + allowed);
  }

  private String ask(String option, String question) throws IOException {
    if (!console.terminal()) {
      throw new ParameterException(
          line, "Missing option " + option + " (" + question + "): nobody is there to be asked");
    }
    String answer = "";
    while (answer.isBlank()) {
      answer = askBlank(question);
    }
    return answer;
  }

  private String askBlank(String question) throws IOException {
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
