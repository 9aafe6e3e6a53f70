// SPDX-License-Identifier: Apache-2.0
/**
 * What is wrong with something the user gave. A {@link org.raftgauge.core.problem.Problem} always
 * says where, what and how to mend it; readers collect as many as they can find before they stop.
 */
package org.raftgauge.core.problem;
