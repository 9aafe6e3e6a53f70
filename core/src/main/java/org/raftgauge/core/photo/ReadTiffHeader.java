// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;
import org.raftgauge.core.photo.PictureHeader.ByteRange;
import org.raftgauge.core.photo.PictureHeader.Format;

/**
 * Reads the first directory of a TIFF file and checks that the pixels it points to are inside the
 * file.
 *
 * <p>Source: TIFF revision 6.0 (Aldus, 1992), part 1.
 */
final class ReadTiffHeader {
  private static final int ENTRY_BYTES = 12;
  private static final int WIDTH = 256;
  private static final int HEIGHT = 257;
  private static final int BITS = 258;
  private static final int PHOTOMETRIC = 262;
  private static final int STRIP_OFFSETS = 273;
  private static final int ORIENTATION = 274;
  private static final int STRIP_BYTES = 279;
  private static final int TILE_OFFSETS = 324;
  private static final int TILE_BYTES = 325;
  private static final int SAMPLE_FORMAT = 339;
  // Bytes of a value of each type, by type number; only whole numbers are read here.
  private static final Map<Integer, Integer> TYPE_BYTES = Map.of(1, 1, 3, 2, 4, 4);
  private static final int PRINT_COLOURS = 5;
  private static final int YCBCR = 6;
  private static final int UNSIGNED = 1;

  private final ByteBuffer file;
  private final Map<Integer, Integer> entryAt = new HashMap<>();

  private ReadTiffHeader(byte[] bytes) {
    file = ByteBuffer.wrap(bytes);
    file.order(bytes[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
  }

  /** Reads the headers of a file that begins with a TIFF byte-order mark. */
  static HeaderResult of(byte[] bytes) {
    ReadTiffHeader reader = new ReadTiffHeader(bytes);
    return reader.readEntries() ? reader.header() : reader.breaksOff();
  }

  private UnreadablePhoto breaksOff() {
    return UnreadablePhoto.damaged(
        "the TIFF breaks off: it points behind its end at " + file.limit() + " bytes");
  }

  private boolean readEntries() {
    if (file.limit() < 8) {
      return false;
    }
    long directory = Integer.toUnsignedLong(file.getInt(4));
    if (directory + 2 > file.limit()) {
      return false;
    }
    int count = Short.toUnsignedInt(file.getShort((int) directory));
    if (directory + 2 + (long) count * ENTRY_BYTES > file.limit()) {
      return false;
    }
    for (int i = 0; i < count; i++) {
      int at = (int) directory + 2 + i * ENTRY_BYTES;
      entryAt.putIfAbsent(Short.toUnsignedInt(file.getShort(at)), at);
    }
    return true;
  }

  private HeaderResult header() {
    long photometric = first(PHOTOMETRIC, UNSIGNED);
    if (photometric == PRINT_COLOURS) {
      return UnreadablePhoto.unsupported("the TIFF is in print colours (CMYK)");
    }
    long bits = first(BITS, 1);
    if (photometric > YCBCR || bits > 16 || first(SAMPLE_FORMAT, UNSIGNED) != UNSIGNED) {
      return UnreadablePhoto.unsupported("the TIFF is not an ordinary 8-bit or 16-bit RGB picture");
    }
    if (!pixelsInside(STRIP_OFFSETS, STRIP_BYTES) || !pixelsInside(TILE_OFFSETS, TILE_BYTES)) {
      return breaksOff();
    }
    if (!entryAt.containsKey(STRIP_OFFSETS) && !entryAt.containsKey(TILE_OFFSETS)) {
      return UnreadablePhoto.damaged("the TIFF holds no picture");
    }
    PictureHeader header =
        new PictureHeader(
            Format.TIFF,
            first(WIDTH, 0),
            first(HEIGHT, 0),
            new ByteRange(0, file.limit()),
            entryAt.containsKey(ORIENTATION)
                ? OptionalInt.of(entryAt.get(ORIENTATION) + 8)
                : OptionalInt.empty());
    return header.ifFilledBy(sum(STRIP_BYTES) + sum(TILE_BYTES));
  }

  private long sum(int tag) {
    long sum = 0;
    for (long i = 0; i < count(tag); i++) {
      sum += Integer.toUnsignedLong(value(tag, i).orElse(0));
    }
    return sum;
  }

  private boolean pixelsInside(int offsetsTag, int bytesTag) {
    long parts = count(offsetsTag);
    if (parts != count(bytesTag)) {
      return false;
    }
    for (long i = 0; i < parts; i++) {
      OptionalInt from = value(offsetsTag, i);
      OptionalInt length = value(bytesTag, i);
      if (from.isEmpty() || length.isEmpty()) {
        return false;
      }
      long end =
          Integer.toUnsignedLong(from.getAsInt()) + Integer.toUnsignedLong(length.getAsInt());
      if (end > file.limit()) {
        return false;
      }
    }
    return true;
  }

  private long count(int tag) {
    Integer at = entryAt.get(tag);
    return at == null ? 0 : Integer.toUnsignedLong(file.getInt(at + 4));
  }

  private long first(int tag, long otherwise) {
    OptionalInt value = count(tag) == 0 ? OptionalInt.empty() : value(tag, 0);
    return value.isPresent() ? Integer.toUnsignedLong(value.getAsInt()) : otherwise;
  }

  /** Returns a value's 32 bits; empty where its type is not a whole number or it is not inside. */
  private OptionalInt value(int tag, long index) {
    int at = entryAt.get(tag);
    Integer size = TYPE_BYTES.get(Short.toUnsignedInt(file.getShort(at + 2)));
    if (size == null) {
      return OptionalInt.empty();
    }
    boolean inEntry = count(tag) * size <= 4;
    long from = (inEntry ? at + 8L : Integer.toUnsignedLong(file.getInt(at + 8))) + index * size;
    if (from + size > file.limit()) {
      return OptionalInt.empty();
    }
    return OptionalInt.of(number((int) from, size));
  }

  private int number(int from, int size) {
    if (size == 1) {
      return Byte.toUnsignedInt(file.get(from));
    }
    return size == 2 ? Short.toUnsignedInt(file.getShort(from)) : file.getInt(from);
  }
}
