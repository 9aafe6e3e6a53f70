// SPDX-License-Identifier: Apache-2.0
/**
 * A soak: one run over many thousand small drawn photos of distinct bytes, rafts and times, to see
 * whether memory and time a photo stay flat. The areas are not scored here.
 */
package org.raftgauge.proving.soak;
