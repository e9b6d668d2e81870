package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** Against the system's own file calls: what is written at one end is read at the other. */
@Timeout(20)
@EnabledOnOs({OS.LINUX, OS.MAC})
class PseudoTerminalTest {
  @Test
  void write_everyByteValue_comesOutUnchanged() throws IOException {
    byte[] all = allBytes();
    try (PseudoTerminal line = PseudoTerminal.open()) {
      line.write(all, 0, all.length);

      assertThat(line.pending()).isEqualTo(256);
      try (RandomAccessFile port = new RandomAccessFile(line.path(), "rw")) {
        byte[] read = new byte[256];
        port.readFully(read);
        assertThat(read).isEqualTo(all);
      }
      assertThat(line.pending()).isZero();
    }
  }

  @Test
  void read_everyByteValue_comesOutUnchanged() throws IOException {
    byte[] all = allBytes();
    try (PseudoTerminal line = PseudoTerminal.open();
        RandomAccessFile port = new RandomAccessFile(line.path(), "rw")) {
      port.write(all);

      byte[] buffer = new byte[1000];
      int count = line.read(buffer);
      assertThat(Arrays.copyOf(buffer, count)).isEqualTo(all);
      assertThat(line.read(buffer)).isZero();
    }
  }

  @Test
  void tryWrite_nobodyReads_takesSomeAndThenNone() throws IOException {
    byte[] block = new byte[4096];
    try (PseudoTerminal line = PseudoTerminal.open()) {
      int taken = 0;
      int last;
      do {
        last = line.tryWrite(block, 0, block.length);
        taken += last;
      } while (last > 0 && taken < 1 << 20);

      assertThat(taken).isBetween(1, (1 << 20) - 1);
      assertThat(line.awaitRead(Duration.ofMillis(5))).isFalse();
    }
  }

  @Test
  void write_moreThanTheLineHolds_waitsForTheReader() throws Exception {
    int total = 200_000;
    try (PseudoTerminal line = PseudoTerminal.open();
        RandomAccessFile port = new RandomAccessFile(line.path(), "rw")) {
      Thread writer = new Thread(() -> writeAll(line, new byte[total]), "writer");
      writer.start();
      byte[] read = new byte[total];

      port.readFully(read);

      writer.join();
      assertThat(line.awaitRead(Duration.ofSeconds(5))).isTrue();
    }
  }

  @Test
  void open_readerComesAndGoes_lineStays() throws IOException {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      new RandomAccessFile(line.path(), "rw").close();

      assertThat(line.read(new byte[10])).isZero();
    }
  }

  @Test
  void openAlone_readerGone_readSaysSo() throws IOException {
    try (PseudoTerminal line = PseudoTerminal.openAlone()) {
      try (RandomAccessFile port = new RandomAccessFile(line.path(), "rw")) {
        port.write('a');
        assertThat(line.read(new byte[10])).isEqualTo(1);
        assertThat(line.read(new byte[10])).isZero();
      }

      assertThat(line.read(new byte[10])).isEqualTo(-1);
      assertThatThrownBy(line::pending).isInstanceOf(IllegalStateException.class);
    }
  }

  @Test
  void close_portStillOpen_portHangsUp() throws IOException {
    PseudoTerminal line = PseudoTerminal.open();
    try (RandomAccessFile port = new RandomAccessFile(line.path(), "rw")) {
      line.close();
      line.close();

      // a terminal that was hung up is at its end, or gives an error; it never blocks
      assertThat(readOrMinusOne(port)).isEqualTo(-1);
      assertThatThrownBy(() -> line.tryWrite(new byte[1], 0, 1))
          .isInstanceOf(IOException.class)
          .hasMessageContaining(line.path());
    }
  }

  private static int readOrMinusOne(RandomAccessFile port) {
    try {
      return port.read();
    } catch (IOException e) {
      return -1;
    }
  }

  private static void writeAll(PseudoTerminal line, byte[] bytes) {
    try {
      line.write(bytes, 0, bytes.length);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] allBytes() {
    byte[] all = new byte[256];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    return all;
  }
}
