// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;

/**
 * What is asked.
 *
 * @param evening the farm's day at whose end is forecast; nothing later is looked at
 * @param rule how
 */
public record Asked(LocalDate evening, ForecastRule rule) {}
