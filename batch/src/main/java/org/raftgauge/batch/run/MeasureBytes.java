// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.Optional;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * The first pass over the bytes of one photo, wherever they are: without history or pictures, so
 * that another engine's tasks can run it. Several threads may call it.
 */
public final class MeasureBytes {
  private final Measurer measurer;
  private final String code;

  /**
   * Prepares.
   *
   * @param measurer measures by a book
   */
  public MeasureBytes(Measurer measurer) {
    this.measurer = measurer;
    this.code = ProgramVersion.current().measuringCode();
  }

  /**
   * Hashes what besides its bytes the measure of a photo depends on: the measuring program, the
   * parts of the book that the photo uses, and what is known of it.
   *
   * @param facts what is known of the photo
   * @return the hash that the history keeps beside a measure
   */
  public String settings(PhotoFacts facts) {
    return MeasureOne.settings(code, measurer, facts, Optional.empty());
  }

  /**
   * Hashes a photo's bytes.
   *
   * @param bytes of its file
   * @return SHA-256, 64 hex digits
   */
  public static String sha256(byte[] bytes) {
    return Digest.of(bytes);
  }

  /**
   * Measures a photo; never throws for what the photo is.
   *
   * @param bytes of its file
   * @param facts what else is known of it
   * @return its outcome, without pictures
   */
  // Throwable: a photo that runs the memory out or meets a bug must not stop the others.
  public Measured measure(byte[] bytes, PhotoFacts facts) {
    try {
      PhotoMeasure measure = measurer.measure(bytes, facts).measure();
      return new Measured(measure, settings(facts), Measured.Source.FRESH, false, "");
    } catch (Throwable e) {
      return Measured.crashed(facts.photo(), Digest.of(bytes), e);
    }
  }
}
