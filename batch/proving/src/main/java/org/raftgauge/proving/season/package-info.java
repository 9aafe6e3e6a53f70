// SPDX-License-Identifier: Apache-2.0
/**
 * Whole growing seasons without pictures: areas as they would be measured, with exact truth, faults
 * of plants, ponds, cameras and photos, and the score of the verdicts against them. Areas in cm2,
 * days after transplant. Everything is invented; the strengths are stated in {@link
 * org.raftgauge.proving.season.SeasonPlan}.
 */
package org.raftgauge.proving.season;
