// SPDX-License-Identifier: Apache-2.0
/** Measures rendered plants exactly: straight down from infinitely far, on a fine grid. */
package org.raftgauge.proving.truth;
