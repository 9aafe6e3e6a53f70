/**
 * Nonlinear least squares of any curve: {@link org.raftgauge.core.leastsquares.NonlinearFit} takes
 * a {@link org.raftgauge.core.leastsquares.MeanFunction}, {@link
 * org.raftgauge.core.leastsquares.Points} (weighted, some only lower bounds) and a start, and gives
 * parameters with covariance or the reason why not; {@link
 * org.raftgauge.core.leastsquares.ProfileInterval} gives profile intervals. Units are the caller's.
 * Levenberg-Marquardt and QR by Hipparchus; sources at each type.
 */
package org.raftgauge.core.leastsquares;
