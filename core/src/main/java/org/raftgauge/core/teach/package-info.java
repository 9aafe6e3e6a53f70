// SPDX-License-Identifier: Apache-2.0
/**
 * Teaches a colour model from labelled pictures: softmax regression on colours of evened light by
 * Newton's method, and for open ground a small network on colour, texture and neighbourhood. In:
 * lit photos and pictures of the same size painted in the palette of {@link
 * org.raftgauge.core.book.Tissue}. Out: a {@link org.raftgauge.core.book.TaughtColour} with its
 * cross-validation by photo, or why there is none.
 */
package org.raftgauge.core.teach;
