// SPDX-License-Identifier: Apache-2.0
/**
 * The work of {@code raftgauge grader}: takes weighings from the crop book and measures from its
 * history, and writes graders, checks of them, and lists of sites to weigh. Pages are FreeMarker
 * templates, which escape what they are given.
 */
package org.raftgauge.batch.grade;
