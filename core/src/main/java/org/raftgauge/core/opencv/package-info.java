// SPDX-License-Identifier: Apache-2.0
/**
 * The only importer of OpenCV's Java binding: static functions with plain types in and out; every
 * native picture dies inside the function that made it.
 */
package org.raftgauge.core.opencv;
