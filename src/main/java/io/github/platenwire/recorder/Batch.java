package io.github.platenwire.recorder;

import io.github.platenwire.method.MethodRun;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.ChannelTally;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Readings that were appended to the file and not yet written: they may be analysed only once they
 * are. Grows to the largest batch and stays there. Not thread-safe.
 */
final class Batch {
  private long[] seqs = new long[1024];
  private long[] elapsedMicros = new long[1024];
  private int[] channels = new int[1024];
  private int[] frameBytes = new int[1024];
  private double[] values = new double[1024];
  private Quality[] qualities = new Quality[1024];
  private @Nullable String[] typed = new @Nullable String[1024];
  private int size;

  void add(long seq, long micros, int channel, int bytes, double value, Quality quality) {
    add(seq, micros, channel, bytes, value, quality, null);
  }

  /** The same with the line itself, where a person typed it. */
  void add(
      long seq,
      long micros,
      int channel,
      int bytes,
      double value,
      Quality quality,
      @Nullable String line) {
    if (size == seqs.length) {
      grow();
    }
    seqs[size] = seq;
    elapsedMicros[size] = micros;
    channels[size] = channel;
    frameBytes[size] = bytes;
    values[size] = value;
    qualities[size] = quality;
    typed[size] = line;
    size++;
  }

  private void grow() {
    int to = 2 * size;
    seqs = Arrays.copyOf(seqs, to);
    elapsedMicros = Arrays.copyOf(elapsedMicros, to);
    channels = Arrays.copyOf(channels, to);
    frameBytes = Arrays.copyOf(frameBytes, to);
    values = Arrays.copyOf(values, to);
    qualities = Arrays.copyOf(qualities, to);
    typed = Arrays.copyOf(typed, to);
  }

  /**
   * Gives the readings that are in the file to the analysis and to the tallies, and forgets all.
   *
   * @param writtenSeq number of the last row that the file has; anything after it is not shown
   */
  void release(long writtenSeq, MethodRun run, List<ChannelTally> tallies) {
    for (int i = 0; i < size && seqs[i] <= writtenSeq; i++) {
      give(i, run);
      tallies.get(channels[i]).count(elapsedMicros[i], qualities[i]);
    }
    size = 0;
  }

  private void give(int i, MethodRun run) {
    String line = typed[i];
    if (line == null) {
      run.reading(seqs[i], elapsedMicros[i], channels[i], frameBytes[i], values[i], qualities[i]);
    } else {
      run.entry(seqs[i], elapsedMicros[i], channels[i], line, values[i], qualities[i]);
      typed[i] = null;
    }
  }
}
