// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/** What came of looking at a photo file's headers: a picture worth decoding, or why it is none. */
public sealed interface PeekResult permits PeekedPhoto, UnreadablePhoto {}
