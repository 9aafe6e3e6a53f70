// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * What a station's photos of one evening say of the station itself: medians over its photos.
 *
 * @param evening the evening
 * @param sharpness 0..1
 * @param exposureClippedFraction 0..1
 * @param lightCast 0..1
 * @param cameraHeightMm height over the deck by the marks or edges, mm
 * @param poseErrorMm how well marks or edges fit, mm
 */
public record StationEvening(
    LocalDate evening,
    OptionalDouble sharpness,
    OptionalDouble exposureClippedFraction,
    OptionalDouble lightCast,
    OptionalDouble cameraHeightMm,
    OptionalDouble poseErrorMm) {}
