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
import java.util.Optional;
import org.raftgauge.batch.plot.Chart;
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
    plots(all, folder);
  }

  private static List<String> sheets(Path folder) {
    return SHEETS.stream().filter(file -> Files.isRegularFile(folder.resolve(file))).toList();
  }

  private static void plots(Gathered all, Path folder) throws IOException {
    for (Map.Entry<String, List<RaftLook>> raft : GatherReport.looks(all).entrySet()) {
      Optional<Chart> chart = new GatherRaft(all, raft.getValue()).chart();
      if (chart.isPresent()) {
        Path file = folder.resolve("plots").resolve(Texts.anchor(raft.getKey()) + ".svg");
        Files.createDirectories(file.getParent());
        Files.writeString(file, PaintChart.svg(chart.get(), "p"));
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
