// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.report.SitePlant;
import org.raftgauge.core.report.SiteRow;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/** Gathers the sheet of one raft. */
final class GatherRaft {
  private final Gathered all;
  private final String raft;
  private final List<RaftLook> looks;
  private final RaftLook last;

  /**
   * @param all what every raft needs
   * @param looks the raft's evenings, oldest first, at least one
   */
  GatherRaft(Gathered all, List<RaftLook> looks) {
    this.all = all;
    this.looks = looks;
    this.last = looks.get(looks.size() - 1);
    this.raft = last.rows().raft().raft().orElseThrow();
  }

  RaftSheet sheet() {
    List<RaftSheet.SiteLine> sites = last.rows().sites().stream().map(this::line).toList();
    return new RaftSheet(
        head(sites),
        facts(),
        measured(),
        layout().map(layout -> DrawBoard.of(raft, layout, sites)).stream().toList(),
        sites.stream().filter(site -> site.mark().weight() > 0).toList(),
        areas(sites, site -> site.mark().weight() == 0 && site.mark() != Mark.NOT_TOLD),
        areas(sites, site -> site.mark() == Mark.NOT_TOLD),
        all.files().overlay(last.rows().photo().photo()),
        all.files().heights(last.rows().photo().photo()),
        all.growth().getOrDefault(raft, List.of()),
        heads(),
        diary(),
        closeUps(sites));
  }

  private static List<String> areas(
      List<RaftSheet.SiteLine> sites, Predicate<RaftSheet.SiteLine> which) {
    return sites.stream().filter(which).map(s -> s.site() + "\u00a0" + s.area()).toList();
  }

  private RaftSheet.Head head(List<RaftSheet.SiteLine> sites) {
    Optional<Judged> judged = all.verdicts().raft(last.evening(), raft);
    int toLookAt = ended() ? 0 : (int) sites.stream().filter(s -> s.mark().toLookAt()).count();
    return new RaftSheet.Head(
        raft,
        Texts.anchor(raft),
        each(Planting::pond),
        each(Planting::berth),
        each(p -> p.variety().isEmpty() ? p.crop() : p.crop() + " " + p.variety()),
        age(last),
        mark(judged),
        state(mark(judged)),
        ended() ? Mark.ENDED : tonight() ? worst(sites) : worst(sites).before(),
        evidence(judged),
        judged.filter(j -> j.verdict() != Verdict.NOT_TOLD).map(GatherRaft::share).orElse(""),
        all.texts().area(last.medianCm2()),
        toLookAt,
        Texts.day(last.evening()),
        last.evening().toString(),
        tonight());
  }

  private boolean tonight() {
    return all.tonight().filter(last.evening()::equals).isPresent();
  }

  /** Says how it stands; of a raft not seen this evening, when it was. */
  private String state(Mark mark) {
    if (tonight() || mark == Mark.ENDED || all.tonight().isEmpty()) {
      return mark.word();
    }
    long days = ChronoUnit.DAYS.between(last.evening(), all.tonight().get());
    String then = mark == Mark.NOT_SEEN ? "" : ", " + mark.word() + " then";
    return "last seen " + Texts.count((int) days, "day") + " ago" + then;
  }

  private static String age(RaftLook look) {
    String age = Texts.age(look.ageDays());
    return look.isSown() && !age.isEmpty() ? age + " from sowing" : age;
  }

  private static String share(Judged judged) {
    return judged.share().map(s -> Texts.percent(s.shareOfExpected())).orElse("");
  }

  /** Says whether what the raft bore has been harvested or cleared since. */
  private boolean ended() {
    return all.tonight().filter(day -> all.book().plantingsOn(raft, day).isEmpty()).isPresent()
        && last.rows().sites().stream().anyMatch(site -> site.plant().isPresent());
  }

  private Mark mark(Optional<Judged> judged) {
    if (ended()) {
      return Mark.ENDED;
    }
    if (!last.rows().doubt().isEmpty()) {
      return Mark.HELD;
    }
    Mark mark = judged.map(j -> Mark.of(j.verdict())).orElse(Mark.NONE);
    return tonight() ? mark : mark.before();
  }

  private String evidence(Optional<Judged> judged) {
    return last.rows().doubt().isEmpty()
        ? judged.map(Judged::evidence).orElse("")
        : last.rows().doubt();
  }

  private static Mark worst(List<RaftSheet.SiteLine> sites) {
    return sites.stream()
        .map(RaftSheet.SiteLine::mark)
        .max(Comparator.comparingInt(Mark::weight))
        .orElse(Mark.NONE);
  }

  private List<ReportModel.Fact> facts() {
    List<ReportModel.Fact> facts = new ArrayList<>();
    fact(facts, "Pond and berth", (each(Planting::pond) + " " + each(Planting::berth)).trim());
    fact(facts, "Lot", each(Planting::lot));
    fact(facts, "Sown", each(p -> p.sownOn().map(Texts::day).orElse("")));
    fact(facts, "Transplanted", each(p -> p.transplantedOn().map(Texts::day).orElse("")));
    fact(facts, "Harvest by", each(p -> p.harvestBy().map(Texts::day).orElse("")));
    fact(facts, "Ended", ended() ? each(p -> p.endedOn().map(Texts::day).orElse("")) : "");
    fact(
        facts,
        "Leaf seen, closed plants at their least",
        all.texts().area(last.rows().totalAreaCm2()));
    fact(facts, "Notes", String.join("; ", last.rows().raft().notes()));
    return facts;
  }

  /** How its numbers came about. */
  private List<ReportModel.Fact> measured() {
    List<ReportModel.Fact> facts = new ArrayList<>();
    fact(facts, "Latest photo", last.rows().photo().photo());
    fact(facts, "SHA-256 of its bytes", last.rows().photo().sha256());
    fact(facts, "Camera over the boards", height());
    fact(facts, "Error of a place on the board", poseError());
    fact(facts, "Placed by", last.rows().raft().poseSource().name().toLowerCase(Locale.ROOT));
    return facts;
  }

  private String height() {
    double mm = last.rows().raft().cameraHeightMm();
    return mm > 0 ? Texts.whole(mm) + " mm" : "";
  }

  private String poseError() {
    return String.format(Locale.ROOT, "%.1f mm", last.rows().raft().poseErrorMm());
  }

  private static void fact(List<ReportModel.Fact> facts, String name, String value) {
    if (!value.isEmpty()) {
      facts.add(new ReportModel.Fact(name, value));
    }
  }

  private RaftSheet.SiteLine line(SiteRow row) {
    Optional<Judged> judged = all.verdicts().site(last.evening(), raft, row.site().site());
    boolean held = !row.site().held().isEmpty() || !last.rows().doubt().isEmpty();
    OptionalDouble area = row.site().projectedAreaCm2();
    String size = area.isPresent() ? all.texts().number(area.getAsDouble()) : "";
    String bound = row.site().closed() && area.isPresent() ? "at least " : "";
    return new RaftSheet.SiteLine(
        row.site().site().toString(),
        held ? Mark.HELD : judged.map(j -> Mark.of(j.verdict())).orElse(measured(row)),
        bound + size,
        judged.filter(GatherRaft::grows).map(GatherRaft::share).orElse(""),
        held ? row.site().held() : judged.map(Judged::evidence).orElse(""));
  }

  /** Says whether it is a plant whose size means something. */
  private static boolean grows(Judged judged) {
    return judged.verdict() != Verdict.DEAD && judged.verdict() != Verdict.EMPTY;
  }

  /** Returns the mark of a site that nothing judged: bare holes can be told all the same. */
  private static Mark measured(SiteRow row) {
    return row.site().projectedAreaCm2().orElse(1) == 0 ? Mark.EMPTY : Mark.NONE;
  }

  private Optional<Layout> layout() {
    return all.book().layout(last.rows().raft().layout(), last.evening());
  }

  private List<RaftSheet.Plot> heads() {
    List<Ahead.Heads> heads = all.input().forecast().heads().getOrDefault(raft, List.of());
    List<RaftSheet.Plot> plots = new ArrayList<>();
    for (int i = 0; i < heads.size(); i++) {
      plots.add(new RaftSheet.Plot(WritePage.heads(raft, i), heads.get(i).words()));
    }
    return plots;
  }

  private List<RaftSheet.DiaryDay> diary() {
    List<RaftSheet.DiaryDay> diary = new ArrayList<>();
    LocalDate before = looks.get(0).evening();
    for (RaftLook look : looks) {
      diary.add(day(look, before));
      before = look.evening();
    }
    return diary;
  }

  private RaftSheet.DiaryDay day(RaftLook look, LocalDate before) {
    return new RaftSheet.DiaryDay(
        Texts.day(look.evening()),
        age(look),
        all.texts().area(look.medianCm2()),
        all.files().board(look),
        all.files().overlay(look.rows().photo().photo()),
        ChronoUnit.DAYS.between(before, look.evening()),
        DiaryEvents.words(all.book(), raft, before, look.evening()));
  }

  private List<RaftSheet.CloseUp> closeUps(List<RaftSheet.SiteLine> sites) {
    String picture = layout().isPresent() ? all.files().board(last) : "";
    return sites.stream()
        .filter(line -> line.mark().toLookAt())
        .map(line -> picture.isEmpty() ? told(line) : cut(line, picture))
        .toList();
  }

  private static RaftSheet.CloseUp told(RaftSheet.SiteLine line) {
    return new RaftSheet.CloseUp(line.site(), line.mark(), line.why(), "", 0, 0, 0);
  }

  private RaftSheet.CloseUp cut(RaftSheet.SiteLine line, String picture) {
    Layout layout = layout().orElseThrow();
    double side = 1.5 * Math.max(layout.grid().pitchXMm(), layout.grid().pitchYMm());
    PointMm at = layout.grid().centre(SiteId.parse(line.site()));
    return new RaftSheet.CloseUp(
        line.site(),
        line.mark(),
        line.why(),
        picture,
        100 * layout.board().widthMm() / side,
        50 - 100 * at.xMm() / side,
        50 - 100 * at.yMm() / side);
  }

  private String each(Function<Planting, String> text) {
    return last.rows().sites().stream()
        .flatMap(site -> site.plant().stream())
        .map(SitePlant::planting)
        .map(text)
        .filter(t -> !t.isEmpty())
        .distinct()
        .sorted()
        .collect(Collectors.joining(", "));
  }
}
