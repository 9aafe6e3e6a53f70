// SPDX-License-Identifier: Apache-2.0
/**
 * The fault campaign: kills runs of the program at random moments and before each step that changes
 * the disk, fills disks, lets runs meet, and checks after each that a plain run brings everything
 * back as it would have been. Invented photos of a small pond; seeds decide every kill.
 */
package org.raftgauge.proving.kill;
