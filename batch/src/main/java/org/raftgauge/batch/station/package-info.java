// SPDX-License-Identifier: Apache-2.0
/**
 * Station set-up on files: reads target photos, writes station files and the pictures that go with
 * them. Lengths in mm, places in px with integer coordinates at pixel centres.
 */
package org.raftgauge.batch.station;
