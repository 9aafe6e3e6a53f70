// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;

/** Reads a file of plain UTF-8 text, with or without a byte order mark. */
public final class PlainText {
  private static final int MOST_BYTES = 64 * 1024 * 1024;
  private static final String SAVE_AS_UTF8 = "save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\")";

  private PlainText() {}

  /**
   * Reads the text of a file of at most 64 MB.
   *
   * @param file the file
   * @param name its name as shown to the user
   * @param findings takes the problem if it is not such a file
   * @return the text without the byte order mark, or nothing if it cannot be read
   */
  public static Optional<String> read(Path file, String name, Findings findings) {
    try {
      if (Files.isDirectory(file)) {
        findings.error(name, "it is a folder, not a file", "move it away and make the file");
        return Optional.empty();
      }
      if (Files.size(file) > MOST_BYTES) {
        findings.error(name, "the file is over 64 MB", "keep it shorter");
        return Optional.empty();
      }
      return decode(Files.readAllBytes(file), name, findings);
    } catch (NoSuchFileException missing) {
      findings.error(name, "there is no such file", "make it, or look for it elsewhere");
    } catch (IOException unreadable) {
      findings.error(
          name, "the file cannot be read (" + unreadable.getMessage() + ")", "mend its rights");
    }
    return Optional.empty();
  }

  private static Optional<String> decode(byte[] bytes, String name, Findings findings) {
    if (isUtf16(bytes)) {
      findings.error(name, "the file is UTF-16", SAVE_AS_UTF8);
      return Optional.empty();
    }
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CoderResult result = decoder.decode(in, out, true);
    String text = out.flip().toString();
    if (result.isError()) {
      long line = text.chars().filter(c -> c == '\n').count() + 1;
      findings.error(name + ":" + line, "a letter is not UTF-8", SAVE_AS_UTF8);
      return Optional.empty();
    }
    return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
  }

  private static boolean isUtf16(byte[] bytes) {
    if (bytes.length < 2) {
      return false;
    }
    int mark = (bytes[0] & 0xFF) << 8 | (bytes[1] & 0xFF);
    return mark == 0xFEFF || mark == 0xFFFE || bytes[0] == 0 || bytes[1] == 0;
  }
}
