// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.util.Locale;
import java.util.Map;

/**
 * Fills page templates; everything that is put in is escaped unless the template says otherwise.
 */
final class Page {

  private Page() {}

  static String fill(String template, Map<String, Object> values) throws IOException {
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_33);
    configuration.setClassForTemplateLoading(Page.class, "/org/raftgauge/batch/grade");
    configuration.setDefaultEncoding("UTF-8");
    configuration.setLocale(Locale.ROOT);
    configuration.setNumberFormat("computer");
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    StringWriter out = new StringWriter();
    try {
      configuration.getTemplate(template).process(values, out);
    } catch (TemplateException e) {
      throw new IOException("the page " + template + " cannot be made: " + e.getMessage(), e);
    }
    return out.toString();
  }
}
