// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Optional;
import org.raftgauge.core.book.PhotoName;

/**
 * What is said of when a photo was taken.
 *
 * @param manifest {@code taken_at} of the manifest as written, where given
 * @param tags what the photo file says
 * @param name what the file's name says; its time says nothing without its date
 */
public record TimeClues(Optional<String> manifest, PhotoTags tags, PhotoName name) {}
