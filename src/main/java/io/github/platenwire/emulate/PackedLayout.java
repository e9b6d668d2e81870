package io.github.platenwire.emulate;

import io.github.platenwire.quantity.Unit;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * How an emulated device writes a reading otherwise than as a line with fixed digits: with an
 * exponent, as a binary frame, or into registers. The load is in tenths of a newton.
 */
public enum PackedLayout implements ReadingLayout {
  /** {@code +1.234500E+03}: the load in newtons, LF. */
  EXPONENT {
    @Override
    public byte[] bytes(Shown shown) {
      return text(load(shown) + "\n");
    }
  },
  /** {@code +1.234500E+03,+2.50000E-01}: the load in newtons, the gauge in millimetres, LF. */
  EXPONENT_AND_GAUGE {
    @Override
    public byte[] bytes(Shown shown) {
      String gauge = String.format(Locale.ROOT, "%+.5E", shown.gaugeMillimetres());
      return text(load(shown) + "," + gauge + "\n");
    }
  },
  /** STX, a state, the load in 0.1 N (32 bits, low byte first), LRC over state and load. */
  FRAME {
    @Override
    public byte[] bytes(Shown shown) {
      byte[] frame = new byte[7];
      ByteBuffer.wrap(frame)
          .order(ByteOrder.LITTLE_ENDIAN)
          .put(STX)
          .put(shown.over() ? OVER : FINE)
          .putInt(tenths(shown));
      frame[6] = CheckBytes.lrc(frame, 1, 6);
      return frame;
    }
  },
  /** AA 55, the load in 0.1 N and the gauge in 0.1 µm (32 bits each), a state, CRC-16. */
  FRAME_WITH_GAUGE {
    @Override
    public byte[] bytes(Shown shown) {
      byte[] frame = new byte[13];
      ByteBuffer.wrap(frame)
          .putShort((short) 0xAA55)
          .putInt(tenths(shown))
          .putInt(shown.gaugeTenths())
          .put(shown.over() ? OVER : FINE);
      return CheckBytes.sealed(frame);
    }
  },
  /** Two registers: the load in 0.1 N (32 bits), the lower word first. */
  REGISTERS {
    @Override
    public byte[] bytes(Shown shown) {
      int load = tenths(shown);
      return ByteBuffer.allocate(4).putShort((short) load).putShort((short) (load >> 16)).array();
    }
  },
  /** Four registers: the load in newtons (IEEE 754, 32 bits), the gauge in 0.1 µm (32 bits). */
  REGISTERS_WITH_GAUGE {
    @Override
    public byte[] bytes(Shown shown) {
      float load = shown.over() ? Float.POSITIVE_INFINITY : (float) (shown.counts() / 10.0);
      return ByteBuffer.allocate(8).putFloat(load).putInt(shown.gaugeTenths()).array();
    }
  };

  private static final byte STX = 0x02;
  private static final byte FINE = 0;
  private static final byte OVER = 2;

  /** The number that stands for overload in 32 bits. */
  private static final int BEYOND = Integer.MAX_VALUE;

  private static int tenths(Shown shown) {
    return shown.over() ? BEYOND : (int) shown.counts();
  }

  /** As IEEE 488.2 writes a number in its form NR3; SCPI's 9.9E37 stands for overload. */
  private static String load(Shown shown) {
    return shown.over() ? "+9.9E+37" : String.format(Locale.ROOT, "%+.6E", shown.counts() / 10.0);
  }

  private static byte[] text(String line) {
    return line.getBytes(StandardCharsets.US_ASCII);
  }

  @Override
  public Unit unit() {
    return Unit.NEWTON;
  }

  @Override
  public int decimals() {
    return 1;
  }

  /** Seven digits: all that the exponent form shows. */
  @Override
  public long greatestCounts() {
    return 99_999_999;
  }

  @Override
  public String terminator() {
    return this == EXPONENT || this == EXPONENT_AND_GAUGE ? "\n" : "";
  }
}
