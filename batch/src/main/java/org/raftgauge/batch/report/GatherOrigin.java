// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.raftgauge.batch.run.CorrectionNotes;
import org.raftgauge.batch.run.RunOutcome;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.track.TrackRules;

/** Gathers how the numbers came about. */
final class GatherOrigin {
  /** The latest that are listed on the page; run.json lists all. */
  private static final int MOST_CORRECTIONS = 8;

  private final Gathered all;

  GatherOrigin(Gathered all) {
    this.all = all;
  }

  ReportModel.Origin origin() {
    return new ReportModel.Origin(limits(), facts(), crops(), photos());
  }

  /** Says by which shares of the expected a plant lags or is ahead, and how sure that must be. */
  private String limits() {
    String lagging = shares(Crop.Limits::laggingShare);
    String ahead = shares(Crop.Limits::aheadShare);
    return "A plant lags when it surely has less than "
        + lagging
        + " of the leaf area expected at its age, and is ahead over "
        + ahead
        + "; a raft as a whole lags under 88 %, a pond under 92 %. The limits of each crop stand"
        + " under its settings, below.";
  }

  private String shares(ToDoubleFunction<Crop.Limits> which) {
    double[] shares =
        all.book().crops().values().stream()
            .mapToDouble(crop -> which.applyAsDouble(crop.limits()))
            .sorted()
            .distinct()
            .toArray();
    if (shares.length == 0) {
      return Texts.percent(which.applyAsDouble(Crop.Limits.defaults()));
    }
    String lo = Texts.percent(shares[0]);
    String hi = Texts.percent(shares[shares.length - 1]);
    return lo.equals(hi) ? lo : lo + " to " + hi;
  }

  private List<ReportModel.Fact> facts() {
    RunOutcome.Stamp stamp = all.input().run().stamp();
    TrackRules rules = TrackRules.defaults();
    List<ReportModel.Fact> facts = new ArrayList<>();
    facts.add(new ReportModel.Fact("Raftgauge version", stamp.version()));
    facts.add(new ReportModel.Fact("Hash of the measuring code", stamp.measuringCode()));
    facts.add(new ReportModel.Fact("Hash of the crop book", stamp.book()));
    facts.add(
        new ReportModel.Fact(
            "Farm's day",
            "from " + all.book().dayStartsAt() + " in " + all.book().zone() + " to the next"));
    facts.add(
        new ReportModel.Fact(
            "Units", all.book().units().name().toLowerCase(Locale.ROOT) + "; tables are metric"));
    facts.add(
        new ReportModel.Fact(
            "A departure is called",
            "when it is likelier than "
                + Texts.percent(rules.believed())
                + " on two evenings running, or than "
                + Texts.percent(rules.believedAtOnce())
                + " at once"));
    corrections(facts);
    return facts;
  }

  private List<ReportModel.Fact> crops() {
    List<ReportModel.Fact> crops = new ArrayList<>();
    all.book().crops().forEach((name, crop) -> crops.add(new ReportModel.Fact(name, words(crop))));
    return crops;
  }

  private static String words(Crop crop) {
    return String.format(
        Locale.ROOT,
        "colour model %s; mean height %.3g mm x (area in cm\u00b2)^%.2f; lagging under %s of the expected leaf area,"
            + " ahead over %s; closed from %s of the outline shared%s",
        crop.colourModel(),
        crop.heightModel().scaleMm(),
        crop.heightModel().exponent(),
        Texts.percent(crop.limits().laggingShare()),
        Texts.percent(crop.limits().aheadShare()),
        Texts.percent(crop.limits().closedOutline()),
        crop.grader().map(grader -> "; grader " + grader).orElse("; no grader"));
  }

  private void corrections(List<ReportModel.Fact> facts) {
    List<Correction> obeyed = all.input().run().summary().corrections();
    if (!obeyed.isEmpty()) {
      facts.add(new ReportModel.Fact("Corrections", CorrectionNotes.line(obeyed)));
      obeyed.subList(Math.max(0, obeyed.size() - MOST_CORRECTIONS), obeyed.size()).stream()
          .map(c -> new ReportModel.Fact("Correction " + c.number(), c.words()))
          .forEach(facts::add);
    }
  }

  private List<ReportModel.Hashed> photos() {
    return all.input().run().photos().stream()
        .map(
            photo ->
                new ReportModel.Hashed(
                    photo.photo(),
                    photo.takenAt().map(OffsetDateTime::toString).orElse(""),
                    photo.station(),
                    status(photo.status()),
                    photo.sha256()))
        .toList();
  }

  private static String status(PhotoStatus status) {
    return status == PhotoStatus.KNOWN
        ? "used, measured on a run before"
        : status.name().toLowerCase(Locale.ROOT);
  }
}
