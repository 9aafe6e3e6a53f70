// SPDX-License-Identifier: Apache-2.0
/**
 * Plain pictures and places in them. Index of a pixel is {@code y * width + x}; integer coordinates
 * are pixel centres.
 */
package org.raftgauge.core.pixels;
