// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import org.raftgauge.proving.truth.PlantTruth;

/**
 * A site of a photo and the truth about it.
 *
 * @param plan the photo
 * @param raft raft id
 * @param site site name
 * @param label its label in the label picture
 * @param kind ok, lagging, pale, dead or empty
 * @param truth areas and heights
 */
record SitePoint(
    PhotoPlan plan, String raft, String site, int label, String kind, PlantTruth truth) {}
