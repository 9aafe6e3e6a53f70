// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;

/**
 * What is said of when a photo was taken.
 *
 * @param manifest {@code taken_at} of the manifest as written, where given
 * @param tags what the photo file says
 * @param nameDate the date in the file's name, where there is one
 * @param nameTime the time in the file's name, where there is one; without a date it says nothing
 */
public record TimeClues(
    Optional<String> manifest,
    PhotoTags tags,
    Optional<LocalDate> nameDate,
    Optional<LocalTime> nameTime) {}
