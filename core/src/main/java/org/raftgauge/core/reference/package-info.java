/**
 * What a plant is compared with: {@link org.raftgauge.core.reference.SmoothReference}, the smooth
 * median and spread of ln area by day from past cycles, shifted by what tonight's cohort has in
 * common; {@link org.raftgauge.core.reference.LeaveGroupOut}, tonight's cohort without the raft
 * itself; and {@link org.raftgauge.core.reference.ThermalTime}, degree-days where they foretell
 * better. Areas cm2 as ln, days after transplant or degree-days (K d); sources at each type.
 *
 * <pre>{@code
 * SmoothReference history = SmoothReference.of(cycles).orElseThrow();
 * CommonShift season = history.shiftOf(dat, lnArea).orElseThrow();
 * double expected = history.lnArea(tonight).orElseThrow() + season.lnShift();
 * }</pre>
 */
package org.raftgauge.core.reference;
