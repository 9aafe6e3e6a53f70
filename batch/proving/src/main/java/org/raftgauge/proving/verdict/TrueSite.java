// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import java.time.LocalDate;
import java.util.Optional;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SiteLook;

/**
 * A plant on one evening: the truth, and what was seen.
 *
 * @param evening the farm's day
 * @param plant a name that stays with it; begins anew with a cut
 * @param raft where it stands
 * @param site where it stands
 * @param dat days since transplanting or its cut
 * @param plight what befalls it
 * @param trueShare its true area over the median of its healthy cohort
 * @param look what a photo said of it, where one was taken
 */
public record TrueSite(
    LocalDate evening,
    String plant,
    String raft,
    SiteId site,
    double dat,
    Plight plight,
    double trueShare,
    Optional<SiteLook> look) {

  String place() {
    return raft + "/" + site;
  }

  boolean closed() {
    return look.map(l -> l.measure().closed()).orElse(false);
  }
}
