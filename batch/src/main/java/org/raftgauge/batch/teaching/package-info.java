// SPDX-License-Identifier: Apache-2.0
/** Files of teaching: labelled pictures in, a model file, a report and pictures of mistakes out. */
package org.raftgauge.batch.teaching;
