// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.batch.plot.PaintChart;

/** Writes a page and its plots. */
public final class WritePage {
  private static final String FILE = "report.html";
  private static final List<String> SHEETS = List.of("worklist-a4.pdf", "worklist-letter.pdf");

  private WritePage() {}

  /**
   * Writes {@code report.html} and {@code plots/}.
   *
   * @param input what the page is made of
   * @param folder the run folder; its pictures are linked where they are there
   * @throws IOException if something cannot be written
   */
  public static void write(ReportInput input, Path folder) throws IOException {
    RunFiles files =
        new RunFiles(input.run().pictures(), file -> Files.isRegularFile(folder.resolve(file)));
    Gathered all = Gathered.of(input, files);
    Files.writeString(folder.resolve(FILE), html(GatherReport.gather(all), sheets(folder)));
    plots(input.forecast(), folder);
  }

  private static List<String> sheets(Path folder) {
    return SHEETS.stream().filter(file -> Files.isRegularFile(folder.resolve(file))).toList();
  }

  /** Returns the file of a plot of a raft's head weights. */
  static String heads(String raft, int number) {
    String more = number == 0 ? "" : "." + (number + 1);
    return "plots/" + Texts.anchor("weights-", raft) + more + ".svg";
  }

  private static void plots(Ahead ahead, Path folder) throws IOException {
    for (Map.Entry<String, List<Ahead.Heads>> raft : ahead.heads().entrySet()) {
      for (int i = 0; i < raft.getValue().size(); i++) {
        Path file = folder.resolve(heads(raft.getKey(), i));
        Files.createDirectories(file.getParent());
        Files.writeString(file, PaintChart.svg(raft.getValue().get(i).chart(), "p"));
      }
    }
  }

  /**
   * Fills the page; every text is escaped by the template engine.
   *
   * @param model the page
   * @param sheets files of the printed worklist, beside the page
   * @return the file's text
   */
  static String html(ReportModel model, List<String> sheets) {
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_33);
    configuration.setClassForTemplateLoading(WritePage.class, "/org/raftgauge/batch/report");
    configuration.setDefaultEncoding("UTF-8");
    configuration.setURLEscapingCharset("UTF-8");
    configuration.setLocale(Locale.ROOT);
    configuration.setNumberFormat("computer");
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    StringWriter out = new StringWriter();
    try {
      List<Mark> marks = Arrays.asList(Mark.values());
      Map<String, Object> root = Map.of("page", model, "marks", marks, "sheets", sheets);
      configuration.getTemplate("report.ftlh").process(root, out);
    } catch (TemplateException | IOException e) {
      throw new IllegalStateException("the page's template is broken: " + e.getMessage(), e);
    }
    return out.toString();
  }
}
