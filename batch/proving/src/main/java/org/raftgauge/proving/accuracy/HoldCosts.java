// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.apache.commons.csv.CSVRecord;

/**
 * What holding and measuring cost on a rendered set: of held sites, what a measure would have said;
 * of measured ones, how many are wrong enough to change a verdict.
 */
public final class HoldCosts {
  /**
   * A healthy plant measured at this share or less would be called lagging by the default limit.
   */
  private static final double LAGGING = 0.78;

  /** One measured at this share or more would be called ahead. */
  private static final double AHEAD = 1.35;

  /** More than this at an empty site would pass for a plant, cm2. */
  private static final double FALSE_PLANT_CM2 = 2;

  /** A 95 % interval reaches this many standard errors to either side. */
  private static final double REACH = 1.96;

  private final Path set;
  private final Map<SiteKey, CSVRecord> run = new HashMap<>();
  private final Map<String, Map<SiteKey, Double>> unheld = new HashMap<>();

  private HoldCosts(Path set, Path sites) throws IOException {
    this.set = set;
    for (CSVRecord row : Table.read(sites)) {
      run.put(SiteKey.of(row), row);
    }
  }

  /** Counts of a group of sites. */
  private static final class Group {
    private int sites;
    private int right;
    private int wrong;
    private int warned;
    private double wrongCm2;
  }

  /**
   * Counts a set.
   *
   * @param set as {@code prove render} made it
   * @param sites {@code sites.csv} of a run over it
   * @return two tables of Markdown
   * @throws IOException if a file cannot be read
   */
  public static String markdown(Path set, Path sites) throws IOException {
    return new HoldCosts(set, sites).markdown();
  }

  private String markdown() throws IOException {
    Map<String, Group> held = new TreeMap<>();
    Map<String, Group> measured = new TreeMap<>();
    UnheldSites unheldSites = new UnheldSites(set);
    for (TruthSite site : TruthSite.read(set.resolve("truth.csv"), "condition")) {
      CSVRecord row = run.get(site.key());
      if (row == null || (site.planted() && !site.open() && site.visibleAreaCm2() < 1)) {
        continue;
      }
      String area = Table.cell(row, "visible_area_cm2");
      if (area.isBlank()) {
        String photo = site.key().photo();
        if (!unheld.containsKey(photo)) {
          unheld.put(photo, unheldSites.areasCm2(photo));
        }
        Double would = unheld.get(photo).get(site.key());
        add(
            held.computeIfAbsent(Table.cell(row, "reason"), r -> new Group()),
            site,
            would == null ? OptionalDouble.empty() : OptionalDouble.of(would),
            0);
      } else {
        String se = Table.cell(row, "projected_area_se_cm2");
        for (String look : List.of(site.look(), "all")) {
          add(
              measured.computeIfAbsent(look.equals("all") ? "~" : look, l -> new Group()),
              site,
              OptionalDouble.of(Double.parseDouble(area)),
              se.isBlank() ? 0 : Double.parseDouble(se));
        }
      }
    }
    return heldTable(held) + "\n" + measuredTable(measured);
  }

  private static void add(Group group, TruthSite site, OptionalDouble said, double se) {
    group.sites++;
    if (said.isEmpty()) {
      return;
    }
    double area = said.getAsDouble();
    double truth = site.planted() ? site.visibleAreaCm2() : 0;
    boolean wrong =
        site.planted() ? area <= LAGGING * truth || area >= AHEAD * truth : area > FALSE_PLANT_CM2;
    group.right += wrong ? 0 : 1;
    group.wrong += wrong ? 1 : 0;
    if (wrong) {
      group.wrongCm2 += Math.abs(area - truth);
      group.warned += Math.abs(area - truth) <= REACH * se ? 1 : 0;
    }
  }

  private static String heldTable(Map<String, Group> held) {
    StringBuilder text =
        new StringBuilder(
            "| held because | sites | would have been right: held for nothing | wrong: saved | no"
                + " board found |\n| --- | ---: | ---: | ---: | ---: |\n");
    held.forEach(
        (reason, g) ->
            text.append(
                String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %d |\n",
                    reason,
                    g.sites,
                    g.right,
                    g.wrong,
                    g.sites - g.right - g.wrong)));
    if (held.isEmpty()) {
      text.append("| nothing was held | 0 | 0 | 0 | 0 |\n");
    }
    return text.toString();
  }

  private static String measuredTable(Map<String, Group> measured) {
    StringBuilder text =
        new StringBuilder(
            "| measured, look | sites | wrong | share | of these with the truth in the 95 % interval"
                + " | mean error of the wrong, cm2 |\n| --- | ---: | ---: | ---: | ---: | ---: |\n");
    List<String> looks = new ArrayList<>(measured.keySet());
    for (String look : looks) {
      Group g = measured.get(look);
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %d | %d | %.1f %% | %d | %.1f |\n",
              look.equals("~") ? "all" : look,
              g.sites,
              g.wrong,
              100.0 * g.wrong / g.sites,
              g.warned,
              g.wrong == 0 ? 0 : g.wrongCm2 / g.wrong));
    }
    return text.toString();
  }
}
