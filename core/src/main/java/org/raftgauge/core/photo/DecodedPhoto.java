// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import org.raftgauge.core.pixels.RgbImage;

/**
 * A photo as pixels, upright, with what its file says of how it was taken.
 *
 * @param image the picture, turned upright by its orientation tag
 * @param tags what the file's Exif block says
 */
public record DecodedPhoto(RgbImage image, PhotoTags tags) implements DecodeResult {}
