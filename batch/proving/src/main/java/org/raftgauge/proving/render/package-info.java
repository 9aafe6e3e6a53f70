// SPDX-License-Identifier: Apache-2.0
/**
 * Turns a scene into a photo: supersampled z-buffer, light with soft shadows, camera electronics.
 * Beside the photo come the exact label and coverage of leaf tissue in every pixel.
 */
package org.raftgauge.proving.render;
