// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

/**
 * A season to simulate.
 *
 * @param rafts number of rafts
 * @param evenings evenings that each raft grows
 * @param plantSd spread of ln(area) among healthy plants, for good
 * @param persistentSd what stays with a site's measure
 * @param photoSd what changes from photo to photo, beside the edge
 * @param winter whether growth is slower
 * @param missedShare share of raft evenings without a photo
 * @param badPhotoShare share of raft photos that are off by a common factor
 * @param pondFault whether a dosing fault slows pond 3 from {@link #FAULT_DAY}
 * @param cameraFault whether station bench-b loses 15 % from {@link #FAULT_DAY}
 * @param gantryFault whether the gantry, which sees pond 6 alone, loses 15 % from {@link
 *     #FAULT_DAY}
 * @param farm what befalls all plants and all photos at once
 */
record SeasonPlan(
    int rafts,
    int evenings,
    double plantSd,
    double persistentSd,
    double photoSd,
    boolean winter,
    double missedShare,
    double badPhotoShare,
    boolean pondFault,
    boolean cameraFault,
    boolean gantryFault,
    Farm farm) {

  /**
   * What befalls all at once.
   *
   * @param growth factor on the growth of all plants after {@link #FAULT_DAY}; below 0 leaf is lost
   * @param photoSd standard deviation of ln(area) of what a station's photos of an evening have in
   *     common
   */
  record Farm(double growth, double photoSd) {
    /** Nothing. */
    static final Farm SOUND = new Farm(1, 0);
  }

  /** Calendar day of the season on which ponds and cameras fail. */
  static final int FAULT_DAY = 16;

  /** Factor on growth in the slow pond. */
  static final double POND_RATE = 0.65;

  /** Factor on everything that a failing camera sees. */
  static final double CAMERA_FACTOR = 0.85;

  /** Standard deviation of a day's growth common to all rafts. */
  static final double WEATHER_SD = 0.02;

  /** Spread of ln(area) among rafts, and among ponds. */
  static final double RAFT_SD = 0.04;

  static final double POND_SD = 0.02;

  static SeasonPlan usual(int rafts, boolean winter) {
    return new SeasonPlan(
        rafts,
        25,
        winter ? 0.2 : 0.17,
        0.02,
        0.03,
        winter,
        0.08,
        0.02,
        false,
        false,
        false,
        Farm.SOUND);
  }

  SeasonPlan withPondFault() {
    return new SeasonPlan(
        rafts,
        evenings,
        plantSd,
        persistentSd,
        photoSd,
        winter,
        missedShare,
        badPhotoShare,
        true,
        cameraFault,
        gantryFault,
        farm);
  }

  SeasonPlan withCameraFault() {
    return new SeasonPlan(
        rafts,
        evenings,
        plantSd,
        persistentSd,
        photoSd,
        winter,
        missedShare,
        badPhotoShare,
        pondFault,
        true,
        gantryFault,
        farm);
  }

  SeasonPlan withGantryFault() {
    return new SeasonPlan(
        rafts,
        evenings,
        plantSd,
        persistentSd,
        photoSd,
        winter,
        missedShare,
        badPhotoShare,
        pondFault,
        cameraFault,
        true,
        farm);
  }

  SeasonPlan withFarm(Farm other) {
    return new SeasonPlan(
        rafts,
        evenings,
        plantSd,
        persistentSd,
        photoSd,
        winter,
        missedShare,
        badPhotoShare,
        pondFault,
        cameraFault,
        gantryFault,
        other);
  }
}
