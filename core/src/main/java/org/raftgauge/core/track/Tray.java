// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;

/**
 * How the young plants of a tray stand on an evening, on days after sowing.
 *
 * @param raft the tray
 * @param crop the crop
 * @param sownOn the day of sowing
 * @param days share emerged by evening, in order; at least one
 * @param halfEmerged when half of the planted cells had emerged; absent where they have not
 * @param coefficientOfVariation standard deviation of tonight's areas over their mean, of emerged
 *     cells; absent under three
 * @param none cells where nothing came though it was due by the crop's {@code emerged_by_das}
 * @param several cells that likely hold two plants or more
 * @param bigEnough share of planted cells with the area that the crop's rule asks; absent where the
 *     book has no rule
 * @param ready whether it is to be transplanted by that rule
 */
public record Tray(
    String raft,
    String crop,
    LocalDate sownOn,
    List<Emerged> days,
    Optional<HalfEmerged> halfEmerged,
    OptionalDouble coefficientOfVariation,
    List<SiteId> none,
    List<SiteId> several,
    OptionalDouble bigEnough,
    boolean ready) {

  /** Copies the lists. */
  public Tray {
    days = List.copyOf(days);
    none = List.copyOf(none);
    several = List.copyOf(several);
  }

  /**
   * Share emerged.
   *
   * @param evening the farm's day
   * @param das days after sowing
   * @param emerged cells in which canopy has been seen by then
   * @param planted cells that were sown
   */
  public record Emerged(LocalDate evening, double das, int emerged, int planted) {
    /** Returns the share emerged, 0..1. */
    public double share() {
      return (double) emerged / planted;
    }
  }

  /**
   * Days after sowing to half emergence.
   *
   * @param das between the evenings before and after, by a straight line
   * @param lo95 lower end of its 95 % interval
   * @param hi95 upper end; absent where the share is not yet credibly over a half
   */
  public record HalfEmerged(double das, double lo95, OptionalDouble hi95) {}

  /** Returns the last evening. */
  public Emerged tonight() {
    return days.get(days.size() - 1);
  }

  /** Returns all of it in a sentence. */
  public String words() {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%d of %d cells have emerged (%.0f %%)",
            tonight().emerged(),
            tonight().planted(),
            100 * tonight().share()));
    halfEmerged.ifPresent(
        half ->
            text.append(
                String.format(Locale.ROOT, ", half of them by day %.1f", half.das())
                    + (half.hi95().isPresent()
                        ? String.format(
                            Locale.ROOT,
                            " (95 %% interval %.1f to %.1f)",
                            half.lo95(),
                            half.hi95().getAsDouble())
                        : "")));
    coefficientOfVariation.ifPresent(
        cv -> text.append(String.format(Locale.ROOT, ", areas vary by %.0f %%", 100 * cv)));
    add(text, none, "nothing came");
    add(text, several, "likely two plants");
    bigEnough.ifPresent(
        share ->
            text.append(
                String.format(
                    Locale.ROOT,
                    "; %.0f %% are big enough: %s",
                    100 * share,
                    ready ? "ready to transplant" : "not ready to transplant")));
    return text.toString();
  }

  private static void add(StringBuilder text, List<SiteId> sites, String what) {
    if (!sites.isEmpty()) {
      text.append("; ").append(what).append(" in ").append(sites.size()).append(" cells");
    }
  }
}
