// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.CloseEvening;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.RaftLook;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.report.CurvesTable;
import org.raftgauge.core.report.VerdictsTable;
import org.raftgauge.core.report.WorklistTable;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.track.Verdict;

/** A simulated season of 200 rafts over 25 evenings each, taken in and judged by the program. */
class SeasonThroughTheProgramTest {
  private static final int RAFTS = 200;
  private static final LocalDate EVENING = SeasonFiles.FIRST.plusDays(20);

  @TempDir Path folder;

  @Test
  void importedSeasonIsJudgedAsItIsInTheLibrary() throws IOException {
    SeasonPlan plan = SeasonPlan.usual(RAFTS, false);
    SeasonFiles.write(folder, plan, SimulateSeason.grow(plan, 1));
    Path book = folder.resolve("book");

    run("import", folder.resolve("sites.csv").toString(), "--book", book.toString());
    Path out = folder.resolve("out");
    run("judge", "--book", book.toString(), "--on", EVENING.toString(), "--out", out.toString());

    EveningResult here = CloseEvening.of(CropBook.read(book).book(), seen(), EVENING, Map.of());
    assertEquals(VerdictsTable.csv(here.verdicts()), Files.readString(out.resolve("verdicts.csv")));
    assertEquals(CurvesTable.csv(here.curves()), Files.readString(out.resolve("curves.csv")));
    assertEquals(WorklistTable.csv(here.worklist()), Files.readString(out.resolve("worklist.csv")));
    assertTrue(here.siteCounts().get(Verdict.LAGGING) > 0, here.siteCounts().toString());
  }

  @Test
  void forecastOfASeasonHoldsTheTrueAreasOfFiveDaysLater() throws Exception {
    SeasonPlan plan = SeasonPlan.usual(RAFTS, false);
    List<SeasonSite> sites = SimulateSeason.grow(plan, 1);
    SeasonFiles.write(folder, plan, sites);
    Path book = folder.resolve("book");
    run("import", folder.resolve("sites.csv").toString(), "--book", book.toString());

    Path out = folder.resolve("forecast");
    run("forecast", "--book", book.toString(), "--on", EVENING.toString(), "--out", out.toString());

    Map<String, Double> truth = new TreeMap<>();
    sites.stream()
        .filter(s -> SeasonFiles.FIRST.plusDays(s.day()).equals(EVENING.plusDays(5)))
        .forEach(s -> truth.merge(s.raft(), s.trueCm2(), Double::sum));
    List<Double> errors = new ArrayList<>();
    int inside = 0;
    for (CSVRecord row : rows(out.resolve("forecast.csv"))) {
      boolean due = row.get("date").equals(EVENING.plusDays(5).toString());
      if (row.get("scope").equals("raft") && due && truth.containsKey(row.get("raft"))) {
        double is = truth.get(row.get("raft"));
        errors.add(Math.abs(Double.parseDouble(row.get("total_area_cm2")) / is - 1));
        boolean over = is >= Double.parseDouble(row.get("total_area_lo80_cm2"));
        inside += over && is <= Double.parseDouble(row.get("total_area_hi80_cm2")) ? 1 : 0;
        assertEquals("", row.get("total_weight_g"), "no grader, no weight");
        assertTrue(row.get("warnings").contains("area only"), row.get("warnings"));
        assertTrue(row.get("warnings").contains("a rough forecast"), row.get("warnings"));
      }
    }
    errors.sort(Double::compare);
    // No past cycle bears the curve here: weather of 2 % a day is 4.5 %, the shape is unknown.
    assertTrue(errors.size() > 100, "rafts forecast: " + errors.size());
    assertTrue(
        errors.get(errors.size() / 2) < 0.16,
        "median error "
            + errors.get(errors.size() / 2)
            + ", inside "
            + inside
            + " of "
            + errors.size());
    assertTrue(inside > 0.5 * errors.size(), inside + " of " + errors.size() + " inside 80 %");
  }

  private static List<CSVRecord> rows(Path file) throws IOException {
    try (CSVParser parser =
        CSVParser.parse(
            file,
            StandardCharsets.UTF_8,
            CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get())) {
      return parser.getRecords();
    }
  }

  /** Reads the looks from the file itself, later ones too. */
  private Seen seen() throws IOException {
    List<RaftLook> rafts = new ArrayList<>();
    List<SiteLook> sites = new ArrayList<>();
    Set<String> photos = new HashSet<>();
    List<String> lines = Files.readAllLines(folder.resolve("sites.csv"));
    for (String line : lines.subList(1, lines.size())) {
      // station,raft,site,taken_at,projected_area_cm2,projected_area_se_cm2,closed
      String[] cells = line.split(",", -1);
      OffsetDateTime at = OffsetDateTime.parse(cells[3]);
      String photo = cells[1] + " " + at;
      if (photos.add(photo)) {
        rafts.add(new RaftLook(photo, cells[0], cells[1], at, "", RaftLook.Tag.FINE));
      }
      sites.add(new SiteLook(photo, cells[0], cells[1], at, measure(cells)));
    }
    return new Seen(rafts, sites);
  }

  private static SiteMeasure measure(String[] cells) {
    return new SiteMeasure(
        SiteId.parse(cells[2]),
        OptionalDouble.of(Double.parseDouble(cells[4])),
        OptionalDouble.of(Double.parseDouble(cells[5])),
        OptionalDouble.empty(),
        Boolean.parseBoolean(cells[6]),
        0,
        0,
        1,
        List.of(),
        List.of(),
        1,
        "");
  }

  private static void run(String... args) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream to = new PrintStream(said, true, StandardCharsets.UTF_8);
    int code = Raftgauge.run(args, new BookWorkplace(), new Console(to, to, false));
    assertEquals(0, code, said.toString(StandardCharsets.UTF_8));
  }
}
