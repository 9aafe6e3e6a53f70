// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;

/**
 * Grows a season: healthy plants on one Gompertz curve of ln(area) times a factor of their own for
 * good, weather common to all, rafts and ponds that differ a little, and plants that meet a fate.
 */
final class SimulateSeason {
  static final SiteGrid GRID = new SiteGrid(6, 3, 120, 150, 180, 180, 0);
  static final int PONDS = 6;

  /** Days between the starts of cohorts. */
  static final int COHORT_DAYS = 3;

  static final int COHORTS = 8;
  private static final double START_LN = Math.log(7);
  private static final double CELL_CM2 = 300;

  private final SeasonPlan plan;
  private final Random random;
  private final double[] weather;
  private final double[] ponds = new double[PONDS];
  private final Map<String, double[]> light = new TreeMap<>();

  private SimulateSeason(SeasonPlan plan, long seed) {
    this.plan = plan;
    this.random = new Random(seed);
    this.weather = new double[days(plan)];
    for (int day = 0; day < weather.length; day++) {
      weather[day] = SeasonPlan.WEATHER_SD * random.nextGaussian();
    }
    Random lights = new Random(seed + 1);
    for (String station : List.of("bench-a", "bench-b", "gantry")) {
      light.put(
          station,
          DoubleStream.generate(() -> plan.farm().photoSd() * lights.nextGaussian())
              .limit(days(plan))
              .toArray());
    }
    for (int pond = 0; pond < PONDS; pond++) {
      ponds[pond] = SeasonPlan.POND_SD * random.nextGaussian();
    }
  }

  static int days(SeasonPlan plan) {
    return plan.evenings() + COHORT_DAYS * (COHORTS - 1) + 1;
  }

  /** Simulates a season; the same seed gives the same season. */
  static List<SeasonSite> grow(SeasonPlan plan, long seed) {
    SimulateSeason season = new SimulateSeason(plan, seed);
    List<SeasonSite> sites = new ArrayList<>();
    for (int raft = 0; raft < plan.rafts(); raft++) {
      season.raft(raft, sites);
    }
    return sites;
  }

  static String raftId(int raft) {
    return String.format(Locale.ROOT, "SR-%03d", raft + 1);
  }

  static int pondOf(int raft) {
    return raft % PONDS;
  }

  static int startDay(int raft) {
    return COHORT_DAYS * (raft / PONDS % COHORTS);
  }

  static String stationOf(int raft) {
    int pond = pondOf(raft);
    return pond == PONDS - 1 ? "gantry" : pond < 3 ? "bench-a" : "bench-b";
  }

  private void raft(int raft, List<SeasonSite> sites) {
    double own = SeasonPlan.RAFT_SD * random.nextGaussian() + ponds[pondOf(raft)];
    int n = GRID.sites().size();
    double[] plants = new double[n];
    double[] faults = new double[n];
    double[] stays = new double[n];
    Fate[] fates = new Fate[n];
    for (int i = 0; i < n; i++) {
      plants[i] = plan.plantSd() * random.nextGaussian() + own;
      stays[i] = plan.persistentSd() * random.nextGaussian();
      fates[i] = Fate.draw(random);
    }
    double healthy = START_LN;
    double pondLoss = 0;
    for (int age = 0; age < plan.evenings(); age++) {
      int day = startDay(raft) + age;
      double growth = Math.max(0.003, rate(age) * (1 + weather[day] / 0.1));
      if (age > 0) {
        healthy += growth;
        boolean slow = plan.pondFault() && pondOf(raft) == 2 && day > SeasonPlan.FAULT_DAY;
        pondLoss += slow ? (SeasonPlan.POND_RATE - 1) * growth : 0;
        boolean changed = day > SeasonPlan.FAULT_DAY;
        pondLoss += changed ? (plan.farm().growth() - 1) * growth : 0;
        double made = slow ? SeasonPlan.POND_RATE * growth : growth;
        for (int i = 0; i < n; i++) {
          faults[i] += age > fates[i].onsetDat() ? loss(fates[i], made) : 0;
        }
      }
      Photo photo = photo(raft, day);
      for (int i = 0; i < n; i++) {
        double ln = healthy + plants[i] + faults[i] + pondLoss;
        sites.add(site(new Place(raft, i, age), fates[i], new Truth(ln, healthy, stays[i]), photo));
      }
    }
  }

  private static double loss(Fate fate, double growth) {
    return fate.kind() == Fate.Kind.DIES ? -0.5 : (fate.factor() - 1) * growth;
  }

  private double rate(double age) {
    double first = plan.winter() ? 0.17 : 0.24;
    double last = plan.winter() ? 0.05 : 0.045;
    return last + (first - last) * Math.exp(-age / (plan.winter() ? 12 : 9));
  }

  private record Photo(boolean taken, double factor, boolean bad) {}

  private record Place(int raft, int site, int age) {}

  private record Truth(double ln, double healthyLn, double stays) {}

  private Photo photo(int raft, int day) {
    boolean taken = random.nextDouble() >= plan.missedShare();
    boolean bad = random.nextDouble() < plan.badPhotoShare();
    double off =
        bad ? Math.exp((random.nextBoolean() ? 1 : -1) * (0.2 + 0.2 * random.nextDouble())) : 1;
    boolean failing =
        ((plan.cameraFault() && stationOf(raft).equals("bench-b"))
                || (plan.gantryFault() && stationOf(raft).equals("gantry")))
            && day >= SeasonPlan.FAULT_DAY;
    double common = Math.exp(light.get(stationOf(raft))[day]);
    return new Photo(taken, off * common * (failing ? SeasonPlan.CAMERA_FACTOR : 1), bad);
  }

  private SeasonSite site(Place place, Fate fate, Truth truth, Photo photo) {
    boolean nothing = fate.kind() == Fate.Kind.NEVER_EMERGES;
    double area = nothing ? 0 : Math.exp(truth.ln());
    double seen = Math.min(area, CELL_CM2 * (1 + 0.05 * random.nextGaussian()));
    boolean closed = area > 0.8 * CELL_CM2;
    double noise = Math.exp(truth.stays() + plan.photoSd() * random.nextGaussian());
    double edge = 0.15 * random.nextGaussian();
    double measured = Math.max(0, seen * noise * photo.factor() + (area > 0.3 ? edge : 0));
    double se = Math.hypot(0.15, 0.03 * measured);
    SiteId site = GRID.sites().get(place.site());
    return new SeasonSite(
        startDay(place.raft()) + place.age(),
        raftId(place.raft()),
        site,
        place.age() + 0.75,
        fate,
        area,
        Math.exp(truth.healthyLn()),
        photo.taken(),
        stationOf(place.raft()),
        measured < 0.3 ? 0 : measured,
        se,
        closed,
        photo.bad());
  }
}
