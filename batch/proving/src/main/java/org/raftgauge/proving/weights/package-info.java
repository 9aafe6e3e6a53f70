// SPDX-License-Identifier: Apache-2.0
/**
 * Scores the grader's statistics on published hand-weighed lettuce: leave-one-out error, outliers,
 * calibration from few weighings with interval coverage, and what pooling varieties costs. The leaf
 * area of these plants is total, not projected: a check of the statistics, not of the camera.
 */
package org.raftgauge.proving.weights;
