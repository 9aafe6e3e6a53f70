// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import org.apache.commons.csv.CSVRecord;

/**
 * A site of a raft on a photo.
 *
 * @param photo the photo's file name, without folders
 * @param raft raft id
 * @param site site name
 */
public record SiteKey(String photo, String raft, String site) {

  /** Reads the key of a row. */
  static SiteKey of(CSVRecord row) {
    return new SiteKey(
        Table.fileName(Table.cell(row, "photo")), Table.cell(row, "raft"), Table.cell(row, "site"));
  }
}
