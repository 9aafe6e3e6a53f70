// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.growth;

/** What came of fitting a growth curve: the curve with its uncertainty, or why there is none. */
public sealed interface GrowthFit permits Fitted, NotFitted {}
