// SPDX-License-Identifier: Apache-2.0
/**
 * A run over a folder of photos: measures each once, settles which of several photos of a raft and
 * evening counts, writes the tables and publishes the folder whole or not at all. Entry: {@link
 * org.raftgauge.batch.run.RunFolder}. The measurement, the book and the pictures come in as small
 * interfaces, so that nothing here knows pixels.
 */
package org.raftgauge.batch.run;
