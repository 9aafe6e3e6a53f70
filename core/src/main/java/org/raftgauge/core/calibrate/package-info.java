// SPDX-License-Identifier: Apache-2.0
/**
 * From photos of a flat target to a camera's lens: the target's points in photo px (BoofCV), how
 * blurred each photo is, and the pinhole with Brown-Conrady terms that explains the points best,
 * with standard errors, reprojection errors and what to photograph again. Lengths in mm, places in
 * px with integer coordinates at pixel centres.
 *
 * <p>Source of the method: Zhang 2000, A flexible new technique for camera calibration, IEEE PAMI
 * 22:1330-1334.
 */
package org.raftgauge.core.calibrate;
