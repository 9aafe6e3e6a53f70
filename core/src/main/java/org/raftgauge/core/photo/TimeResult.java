// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/** When a photo was taken, or why nobody knows. */
public sealed interface TimeResult permits TakenAt, NoTime {}
