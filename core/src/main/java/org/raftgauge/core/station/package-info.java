// SPDX-License-Identifier: Apache-2.0
/**
 * Says whether a station is as it was: facts of its photos, evening by evening, on control charts
 * against its own recent past. Pure functions on arrays and plain records; times are evenings.
 *
 * <p>Source of the method: NIST/SEMATECH e-Handbook of Statistical Methods, sections 6.3.2
 * (Shewhart) and 6.3.2.4 (EWMA), with a moving past.
 */
package org.raftgauge.core.station;
