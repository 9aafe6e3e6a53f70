// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/** What came of decoding a photo file: a picture, or why there is none. */
public sealed interface DecodeResult permits DecodedPhoto, UnreadablePhoto {}
