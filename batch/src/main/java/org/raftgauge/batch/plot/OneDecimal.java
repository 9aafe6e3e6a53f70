// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.FieldPosition;
import java.util.Locale;
import org.apache.batik.svggen.DefaultErrorHandler;
import org.apache.batik.svggen.DefaultExtensionHandler;
import org.apache.batik.svggen.DefaultStyleHandler;
import org.apache.batik.svggen.ImageHandlerBase64Encoder;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;

/**
 * The library's default way of writing SVG, numbers to one decimal. It keeps a format of its own,
 * for the library's is shared by all threads and is not made for that; and writing thousands of
 * numbers is half the work of a chart.
 */
final class OneDecimal extends SVGGeneratorContext {

  OneDecimal(Document document) {
    super(document);
    setIDGenerator(new SVGIDGenerator());
    setExtensionHandler(new DefaultExtensionHandler());
    setImageHandler(new ImageHandlerBase64Encoder());
    setStyleHandler(new DefaultStyleHandler());
    setErrorHandler(new DefaultErrorHandler());
    decimalFormat = new Tenths();
  }

  /** Formats as {@code #.#} does, faster. */
  static final class Tenths extends DecimalFormat {
    private static final long serialVersionUID = 1;

    /** Of larger numbers the tenths are not surely told by the product with 10. */
    private static final double LARGE = 1e8;

    /** How near to the middle between two tenths the exact digits are asked. */
    private static final double NEAR = 1e-6;

    Tenths() {
      super("#.#", DecimalFormatSymbols.getInstance(Locale.ROOT));
    }

    @Override
    public StringBuffer format(double number, StringBuffer to, FieldPosition field) {
      double tenths = 10 * Math.abs(number);
      long whole = (long) Math.floor(tenths);
      double part = tenths - whole;
      if (!(tenths > 0 && tenths < LARGE) || Math.abs(part - 0.5) < NEAR) {
        return super.format(number, to, field);
      }
      long rounded = part > 0.5 ? whole + 1 : whole;
      if (number < 0) {
        to.append('-');
      }
      to.append(rounded / 10);
      if (rounded % 10 != 0) {
        to.append('.').append((char) ('0' + rounded % 10));
      }
      return to;
    }
  }
}
