// SPDX-License-Identifier: Apache-2.0
/**
 * What lies before the camera: boards with their holes, plugs, markers and tags, slips of tape and
 * paper, the pond, the plants, and the light that falls on it. World frame: mm on the deck plane, z
 * up.
 */
package org.raftgauge.proving.scene;
