// SPDX-License-Identifier: Apache-2.0
/**
 * Times what a person waits for every day: the page of a large farm in a browser, and the word at
 * the station after a photo. Times in seconds, memory in MB of 10^6 bytes.
 */
package org.raftgauge.proving.everyday;
