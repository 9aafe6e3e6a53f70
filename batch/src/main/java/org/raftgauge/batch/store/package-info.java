// SPDX-License-Identifier: Apache-2.0
/**
 * The history: what every photo said, in one SQLite file in the book's folder. In: measures of
 * photos, by the SHA-256 of their bytes. Out: the same measures again. Each save is one
 * transaction, so that a run killed at any moment leaves whole photos or none. The file keeps
 * SQLite's rollback journal, not the write-ahead one: a book may lie on a network drive or in a
 * synchronised folder, where one plain file is safer, and {@link
 * org.raftgauge.batch.store.BookLock} lets only one run write at a time anyway.
 */
package org.raftgauge.batch.store;
