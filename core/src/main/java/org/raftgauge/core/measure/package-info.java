// SPDX-License-Identifier: Apache-2.0
/**
 * The first pass: one pure function from a photo's bytes, what is known of it and the parts of the
 * book it uses, to what it says of each raft and site. No shared state, no file is written.
 */
package org.raftgauge.core.measure;
