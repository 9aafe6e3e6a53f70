// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.desk;

import java.nio.charset.StandardCharsets;

/** What the desk answers; never changes. Holds an array, so it is no record. */
final class Answer {
  private final int status;
  private final String type;
  private final byte[] body;

  Answer(int status, String type, byte[] body) {
    this.status = status;
    this.type = type;
    this.body = body.clone();
  }

  static Answer text(int status, String text) {
    return new Answer(status, "text/plain; charset=utf-8", text.getBytes(StandardCharsets.UTF_8));
  }

  static Answer page(String html) {
    return new Answer(200, "text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8));
  }

  int status() {
    return status;
  }

  String type() {
    return type;
  }

  byte[] body() {
    return body.clone();
  }
}
