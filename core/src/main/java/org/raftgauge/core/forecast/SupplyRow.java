// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * What a crop can supply on a day if nothing is harvested before: the rafts that are ready by then.
 *
 * @param crop the crop
 * @param date the day
 * @param rafts that stand
 * @param readyRafts expected to be ready
 * @param readyHeads heads on them
 * @param readyG their weight, g
 * @param newlyReadyG mean weight of those that become ready on this day, g
 * @param salesG mean weight after trimming, g
 * @param packs whole packs of it, where the crop is packed by weight
 */
public record SupplyRow(
    String crop,
    LocalDate date,
    int rafts,
    double readyRafts,
    double readyHeads,
    Amount readyG,
    double newlyReadyG,
    double salesG,
    OptionalDouble packs) {}
