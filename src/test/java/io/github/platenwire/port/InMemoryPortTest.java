package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class InMemoryPortTest {
  private static final Chunk FIRST = new Chunk(new byte[] {1}, 1_000);
  private static final Chunk SECOND = new Chunk(new byte[] {2}, 2_000);
  private static final Chunk THIRD = new Chunk(new byte[] {3}, 3_000);

  @Test
  void read_handedOver_sameChunksInOrderWithTheirStamps() throws Exception {
    InMemoryPort port = new InMemoryPort("memory", 10);

    assertThat(port.offer(FIRST)).isTrue();
    assertThat(port.offer(SECOND)).isTrue();

    assertThat(port.read()).containsSame(FIRST);
    assertThat(port.read()).containsSame(SECOND);
    assertThat(port.read()).isEmpty();
  }

  @Test
  void offer_portFull_waitsUntilOneWasRead() throws Exception {
    InMemoryPort port = new InMemoryPort("memory", 2);
    AtomicInteger accepted = new AtomicInteger();
    Thread device = new Thread(() -> offerAll(port, accepted), "device");
    device.start();
    Eventually.holds(() -> device.getState() == Thread.State.WAITING);
    assertThat(accepted).hasValue(2);

    assertThat(port.read()).containsSame(FIRST);

    device.join();
    assertThat(accepted).hasValue(3);
    assertThat(port.read()).containsSame(SECOND);
    assertThat(port.read()).containsSame(THIRD);
  }

  private static void offerAll(InMemoryPort port, AtomicInteger accepted) {
    try {
      for (Chunk chunk : List.of(FIRST, SECOND, THIRD)) {
        port.offer(chunk);
        accepted.incrementAndGet();
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void end_chunksLeft_linkLostOnlyAfterThem() throws Exception {
    InMemoryPort port = new InMemoryPort("memory", 2);
    port.offer(FIRST);
    port.end();

    assertThat(port.offer(SECOND)).isFalse();
    assertThat(port.read()).containsSame(FIRST);
    assertThatThrownBy(port::read)
        .isInstanceOf(LinkLostException.class)
        .hasMessage("memory: the device has gone");
  }

  @Test
  void close_deviceWaits_itsChunkIsRefused() throws Exception {
    InMemoryPort port = new InMemoryPort("memory", 1);
    port.offer(FIRST);
    CompletableFuture<Boolean> offered = new CompletableFuture<>();
    Thread device = new Thread(() -> offered.complete(offer(port)), "device");
    device.start();
    Eventually.holds(() -> device.getState() == Thread.State.WAITING);

    port.close();

    assertThat(offered.get(10, TimeUnit.SECONDS)).isFalse();
    assertThatThrownBy(port::read).isInstanceOf(LinkLostException.class);
  }

  private static boolean offer(InMemoryPort port) {
    try {
      return port.offer(SECOND);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void write_deviceListens_getsTheBytes() throws IOException {
    List<byte[]> sent = new ArrayList<>();
    InMemoryPort port = new InMemoryPort("memory", 1, sent::add);

    port.write(new byte[] {7, 8});

    assertThat(sent).containsExactly(new byte[] {7, 8});
  }

  @Test
  void write_deviceOnlyTalks_refused() {
    InMemoryPort port = new InMemoryPort("memory", 1);

    assertThatThrownBy(() -> port.write(new byte[1])).isInstanceOf(IOException.class);
  }

  @Test
  void read_nothingHandedOver_returnsEmptySoon() throws IOException {
    assertThat(new InMemoryPort("memory", 1).read()).isEqualTo(Optional.empty());
  }

  @Test
  void construct_noCapacity_refused() {
    assertThatThrownBy(() -> new InMemoryPort("memory", 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
