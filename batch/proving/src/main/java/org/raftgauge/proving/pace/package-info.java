// SPDX-License-Identifier: Apache-2.0
/**
 * Measures how fast photos are measured, beside two yardsticks in the same call: a JPEG decoder of
 * the system and a plain Python script. Nothing here is a test; a busy machine gives other figures.
 */
package org.raftgauge.proving.pace;
