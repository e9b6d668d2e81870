package io.github.platenwire.bench;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import io.github.platenwire.reading.SystemClocks;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * What one would write in an afternoon: line after line into a CSV library, with the time of day
 * and the number as it reads. No seal, nothing forced.
 */
final class SimpleReader implements LineReader {
  @Override
  public void read(Port port, Path file, long lines) throws IOException {
    try (BufferedReader reader =
            new BufferedReader(new InputStreamReader(new Stream(port), StandardCharsets.US_ASCII));
        BufferedWriter writer =
            Files.newBufferedWriter(
                file, StandardCharsets.US_ASCII, StandardOpenOption.CREATE_NEW);
        CSVPrinter table = new CSVPrinter(writer, CSVFormat.RFC4180)) {
      for (long line = 0; line < lines; line++) {
        String text = reader.readLine();
        if (text == null) {
          throw new IOException("the line ended early");
        }
        table.printRecord(
            SystemClocks.wall().now(), Double.parseDouble(text.substring(0, text.indexOf(' '))));
      }
    }
  }

  /** A port as a stream. */
  private static final class Stream extends InputStream {
    private final Port port;
    private byte[] bytes = new byte[0];
    private int at;

    Stream(Port port) {
      this.port = port;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      while (at == bytes.length) {
        Optional<Chunk> chunk = port.read();
        if (chunk.isPresent()) {
          bytes = chunk.get().bytes();
          at = 0;
        }
      }
      int count = Math.min(length, bytes.length - at);
      System.arraycopy(bytes, at, into, from, count);
      at += count;
      return count;
    }
  }
}
