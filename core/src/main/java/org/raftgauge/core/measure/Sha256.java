// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The hash by which a photo is known. */
final class Sha256 {

  private Sha256() {}

  /** Returns 64 lower-case hex digits. */
  static String hex(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
