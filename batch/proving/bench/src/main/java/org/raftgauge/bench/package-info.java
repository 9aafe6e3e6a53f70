// SPDX-License-Identifier: Apache-2.0
/** Benchmarks by JMH of the stages that a photo goes through, in milliseconds a photo. */
package org.raftgauge.bench;
