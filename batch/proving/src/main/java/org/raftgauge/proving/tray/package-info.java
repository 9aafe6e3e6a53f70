// SPDX-License-Identifier: Apache-2.0
/**
 * Renders propagation trays of seedlings whose emergence is known cell by cell, and scores what the
 * program says of them. Areas in cm2, days after sowing with the time of day as a fraction.
 */
package org.raftgauge.proving.tray;
