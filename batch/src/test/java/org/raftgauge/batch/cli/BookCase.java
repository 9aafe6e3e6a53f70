// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * One case of the catalogue of broken books: what is changed in a sound book, and what the program
 * must say of it. A case reads
 *
 * <pre>
 * == its name
 * edit FILE: OLD => NEW      OLD must stand there
 * add FILE: LINE             behind the last line
 * repeat FILE: COUNT TEXT    so many times behind what there is
 * write FILE: TEXT           instead of what there is
 * encode FILE: CHARSET
 * delete FILE
 * exit CODE
 * each line that check must print, in order
 * </pre>
 *
 * <p>In texts {@code \n \r \t \\} and Unicode escapes stand for their characters; so that messages
 * show what is invisible, only the changes are unescaped.
 *
 * @param name what is wrong, in words
 * @param changes to the sound book
 * @param exitCode expected
 * @param messages expected, each line of the error stream but the last, which counts them
 */
record BookCase(String name, List<String> changes, int exitCode, List<String> messages) {

  private static final Pattern PARTS = Pattern.compile("(?m)^== ");

  /** Reads a catalogue; lines that begin with {@code #} are comments. */
  static List<BookCase> read(Path catalogue) throws IOException {
    List<BookCase> cases = new ArrayList<>();
    for (String part : PARTS.split(Files.readString(catalogue), -1)) {
      List<String> lines = part.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).toList();
      int exit =
          lines.indexOf(lines.stream().filter(l -> l.startsWith("exit ")).findFirst().orElse(""));
      if (exit > 0) {
        cases.add(
            new BookCase(
                lines.get(0),
                lines.subList(1, exit),
                Integer.parseInt(lines.get(exit).substring(5)),
                lines.subList(exit + 1, lines.size())));
      }
    }
    return cases;
  }

  /** Makes the changes in a copy of the sound book. */
  void apply(Path book) throws IOException {
    for (String change : changes) {
      String verb = change.substring(0, change.indexOf(' '));
      String rest = change.substring(verb.length() + 1);
      int colon = rest.indexOf(':');
      Path file = book.resolve(colon < 0 ? rest : rest.substring(0, colon));
      String text = colon < 0 ? "" : rest.substring(Math.min(rest.length(), colon + 2));
      change(verb, file, text);
    }
  }

  private void change(String verb, Path file, String text) throws IOException {
    switch (verb) {
      case "edit" -> Files.writeString(file, edited(Files.readString(file), text));
      case "add" -> Files.writeString(file, Files.readString(file) + plain(text) + "\n");
      case "repeat" -> {
        String[] words = text.split(" ", 2);
        String tail = plain(words[1]).repeat(Integer.parseInt(words[0]));
        Files.writeString(file, Files.readString(file) + tail);
      }
      case "write" -> {
        Files.createDirectories(file.getParent());
        Files.writeString(file, plain(text));
      }
      case "encode" -> Files.write(file, Files.readString(file).getBytes(Charset.forName(text)));
      case "delete" -> Files.delete(file);
      default -> throw new IllegalStateException(name + ": no such change: " + verb);
    }
  }

  private String edited(String text, String edit) {
    int arrow = edit.indexOf(" =>");
    String old = plain(edit.substring(0, arrow));
    String fresh = plain(edit.substring(Math.min(edit.length(), arrow + 4)));
    if (!text.contains(old)) {
      throw new IllegalStateException(name + ": \"" + old + "\" does not stand there");
    }
    return text.replace(old, fresh);
  }

  static String plain(String escaped) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < escaped.length(); i++) {
      char c = escaped.charAt(i);
      if (c != '\\') {
        text.append(c);
        continue;
      }
      char kind = escaped.charAt(++i);
      switch (kind) {
        case 'n' -> text.append('\n');
        case 'r' -> text.append('\r');
        case 't' -> text.append('\t');
        case 'u' -> {
          text.append((char) Integer.parseInt(escaped.substring(i + 1, i + 5), 16));
          i += 4;
        }
        default -> text.append(kind);
      }
    }
    return text.toString();
  }

  /** Returns all that a stream was told, line by line. */
  static List<String> lines(byte[] said) {
    return new String(said, StandardCharsets.UTF_8).lines().toList();
  }
}
