// SPDX-License-Identifier: Apache-2.0
/** Arguments, progress and exit codes: what a person types and sees. */
package org.raftgauge.batch.cli;
