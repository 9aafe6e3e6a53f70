// SPDX-License-Identifier: Apache-2.0
/**
 * Measures leafy crops on floating rafts from overhead photos, as a library: plain values in, plain
 * values out, no clock, no threads, no printing, no file written.
 *
 * <p>The way of a photo, each package importing only those before it: {@code problem} (what is
 * wrong with what the user gave), {@code pixels}, {@code table} (CSV), {@code opencv} (the only
 * place with native pictures), {@link org.raftgauge.core.book} (the grower's files as checked
 * records), {@link org.raftgauge.core.photo} (bytes to upright pixels and a time), {@link
 * org.raftgauge.core.marker} (corner markers and tags), {@link org.raftgauge.core.plane} (lens,
 * pose, deck picture), {@link org.raftgauge.core.canopy} (how much of a pixel is leaf), {@link
 * org.raftgauge.core.site} (areas per planting site), {@link org.raftgauge.core.measure} (all of it
 * as one function), {@link org.raftgauge.core.history} (which plant, how old, which photo counts),
 * {@link org.raftgauge.core.report} (the CSV files).
 *
 * <p>Start with {@link org.raftgauge.core.book.CropBook#read} and {@link
 * org.raftgauge.core.measure.MeasurePhoto#measure}; the tests' {@code example.MeasureOnePhoto} does
 * so in a few lines. Several evenings' measures become {@link
 * org.raftgauge.core.history.SiteLook}s: of these {@link
 * org.raftgauge.core.history.CollectSeries#upTo} makes plants, {@link
 * org.raftgauge.core.growth.FitGrowth} curves, {@link org.raftgauge.core.evening.CloseEvening}
 * verdicts and {@link org.raftgauge.core.forecast.ForecastEvening} forecasts ({@code
 * example.ForecastFromPhotos}). Lengths are mm on the deck, areas cm2, ratios 0..1.
 */
package org.raftgauge.core;
