/**
 * Curves for plants with few photos: {@link org.raftgauge.core.cohort.FitCohort} fits the curve of
 * a cohort and how its plants spread about it (alone, or with a {@link
 * org.raftgauge.core.cohort.CohortPrior} from past cycles or the crop's curve), and {@link
 * org.raftgauge.core.cohort.CohortCurve#forPlant} shrinks a plant's series to it: forecasts, growth
 * rate, and each photo's innovation. Ln area (cm2) over days after transplant.
 *
 * <pre>{@code
 * CohortPrior prior = FitCohort.priorOf(pastCycles, CohortRule.defaults()).orElseThrow();
 * CohortCurve cohort = FitCohort.of(tonightsPlants, CohortRule.defaults(), prior);
 * PlantCurve plant = cohort.forPlant(series);
 * Forecast at28 = plant.lnArea(28);
 * }</pre>
 *
 * <p>Empirical Bayes on the linearised mixed model; sources at each type.
 */
package org.raftgauge.core.cohort;
