// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 in hex digits. */
public final class Digest {

  private Digest() {}

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Returns the hash of bytes. */
  public static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  /** Returns the hash of texts, each closed by a zero byte, so that no two lists run together. */
  static String of(String... texts) {
    MessageDigest digest = sha256();
    for (String text : texts) {
      digest.update(text.getBytes(StandardCharsets.UTF_8));
      digest.update((byte) 0);
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
