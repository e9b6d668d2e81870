package io.github.platenwire.report;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * How a camera was held, as a JPEG tells it in the tag "orientation" (0x0112) of its Exif segment.
 * Immutable.
 *
 * @param orientation 1 (upright) to 8
 */
record PictureTurn(int orientation) {
  private static final PictureTurn UPRIGHT = new PictureTurn(1);
  private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
  private static final int ORIENTATION = 0x0112;
  private static final int START_OF_IMAGE = 0xFFD8;
  private static final int EXIF_SEGMENT = 0xFFE1;
  private static final int START_OF_SCAN = 0xFFDA;
  private static final int ENTRY_BYTES = 12;

  /** The turn of a file; upright where it tells none, or is no JPEG. */
  static PictureTurn of(byte[] file) {
    ByteBuffer bytes = ByteBuffer.wrap(file);
    if (bytes.remaining() < 4 || (bytes.getShort() & 0xFFFF) != START_OF_IMAGE) {
      return UPRIGHT;
    }
    while (bytes.remaining() >= 4) {
      int marker = bytes.getShort() & 0xFFFF;
      int length = (bytes.getShort() & 0xFFFF) - 2;
      if (marker < 0xFF00 || marker == START_OF_SCAN || length < 0 || length > bytes.remaining()) {
        return UPRIGHT;
      }
      if (marker == EXIF_SEGMENT && length > EXIF.length && startsWithExif(bytes)) {
        return ofExif(bytes.slice(bytes.position() + EXIF.length, length - EXIF.length));
      }
      bytes.position(bytes.position() + length);
    }
    return UPRIGHT;
  }

  private static boolean startsWithExif(ByteBuffer bytes) {
    byte[] head = new byte[EXIF.length];
    bytes.get(bytes.position(), head);
    return Arrays.equals(head, EXIF);
  }

  /** The first directory of a TIFF structure. */
  private static PictureTurn ofExif(ByteBuffer tiff) {
    if (tiff.remaining() < 8) {
      return UPRIGHT;
    }
    tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int directory = tiff.getInt(4);
    if (directory < 8 || directory > tiff.limit() - 2) {
      return UPRIGHT;
    }
    int entries = tiff.getShort(directory) & 0xFFFF;
    for (int i = 0; i < entries; i++) {
      int at = directory + 2 + i * ENTRY_BYTES;
      if (at > tiff.limit() - ENTRY_BYTES) {
        return UPRIGHT;
      }
      if ((tiff.getShort(at) & 0xFFFF) == ORIENTATION) {
        int told = tiff.getShort(at + 8);
        return told >= 1 && told <= 8 ? new PictureTurn(told) : UPRIGHT;
      }
    }
    return UPRIGHT;
  }

  /** Whether width and height change places. */
  boolean isOnItsSide() {
    return orientation >= 5;
  }

  /**
   * Turns a picture upright.
   *
   * @param across its width before
   * @param down its height before
   */
  AffineTransform upright(int across, int down) {
    return switch (orientation) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, across, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, across, down);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, down);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, down, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, down, across);
      case 8 -> new AffineTransform(0, -1, 1, 0, 0, across);
      default -> new AffineTransform();
    };
  }
}
