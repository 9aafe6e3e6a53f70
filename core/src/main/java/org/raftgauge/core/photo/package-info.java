// SPDX-License-Identifier: Apache-2.0
/**
 * From the bytes of a photo file to an upright 8-bit sRGB picture, the time it was taken and how
 * good it is. File formats are told by content, never by name. A photo that cannot be used is a
 * value with a reason and a remedy, not an exception. Sources: ITU-T T.81 (JPEG), the PNG
 * Specification (W3C), TIFF 6.0, Exif 2.32 (CIPA DC-008).
 */
package org.raftgauge.core.photo;
