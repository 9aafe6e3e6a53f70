// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/** What came of reading a file's headers: a picture worth decoding, or why it is none. */
sealed interface HeaderResult permits PictureHeader, UnreadablePhoto {}
