// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/**
 * What a photo file says of itself.
 *
 * @param widthPx width of the upright picture, px
 * @param heightPx height of the upright picture, px
 * @param tags what else it says
 */
public record PeekedPhoto(long widthPx, long heightPx, PhotoTags tags) implements PeekResult {}
