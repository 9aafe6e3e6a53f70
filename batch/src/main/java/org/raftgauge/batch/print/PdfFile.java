// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.TimeZone;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A PDF that is being drawn. */
final class PdfFile implements AutoCloseable {
  static final double POINTS_PER_MM = 72 / 25.4;

  private final PDDocument document = new PDDocument();
  private final PDFont font;

  PdfFile(String title) throws IOException {
    // The font that comes with the library: the same page everywhere, whatever is installed.
    try (InputStream in =
        PDDocument.class.getResourceAsStream(
            "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf")) {
      TrueTypeFont letters = new TTFParser().parse(new RandomAccessReadBuffer(in));
      // Its substitutions change none of our words, and have expressions compiled for each of them.
      letters.setEnableGsub(false);
      document.registerTrueTypeFontForClosing(letters);
      font = PDType0Font.load(document, letters, true);
    }
    document.getDocumentInformation().setTitle(title);
    document.getDocumentInformation().setProducer("raftgauge");
    // No clock: the same marks give the same file.
    Calendar none = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
    none.setTimeInMillis(0);
    document.getDocumentInformation().setCreationDate(none);
    document.setDocumentId(0L);
  }

  /** Starts a page of a size, mm. */
  PdfPage page(double widthMm, double heightMm) throws IOException {
    PDPage page =
        new PDPage(
            new PDRectangle((float) (widthMm * POINTS_PER_MM), (float) (heightMm * POINTS_PER_MM)));
    document.addPage(page);
    return new PdfPage(document, page, font, heightMm);
  }

  /** Returns the width of a text, mm. */
  double widthMm(String text, double sizeMm) throws IOException {
    return PdfPage.widthMm(font, text, sizeMm);
  }

  void save(Path file) throws IOException {
    document.save(file.toFile());
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
