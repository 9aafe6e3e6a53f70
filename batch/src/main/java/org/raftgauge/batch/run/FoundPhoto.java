// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import org.raftgauge.core.measure.PhotoFacts;

/**
 * A photo file with what is known of it besides its bytes.
 *
 * @param file the file
 * @param facts its path below the photo folder and its row of the manifest
 */
public record FoundPhoto(Path file, PhotoFacts facts) {}
