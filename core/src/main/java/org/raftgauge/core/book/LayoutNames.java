// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/** The names of all layouts of the book, those too that could not be read. */
record LayoutNames(List<String> names) {}
