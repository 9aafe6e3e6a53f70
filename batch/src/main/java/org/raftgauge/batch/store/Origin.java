// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

/**
 * What made a measure.
 *
 * @param settings hash of what besides the photo's bytes it depends on
 * @param run the run that measured it
 * @param version the program's version; empty where that is not known any more
 * @param measuringCode hash of the code that measures; empty where not known
 */
public record Origin(String settings, String run, String version, String measuringCode) {}
