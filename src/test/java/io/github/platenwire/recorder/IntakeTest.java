package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.port.Chunk;
import java.util.concurrent.ArrayBlockingQueue;
import org.junit.jupiter.api.Test;

class IntakeTest {
  @Test
  void bytes_queueFullForLong_countsWhatIsDroppedAndSaysItFirst() {
    ArrayBlockingQueue<LinkEvent> queue = new ArrayBlockingQueue<>(1);
    Intake intake = new Intake(0, queue, bytes -> bytes.length / 2, 1);
    intake.bytes(chunk(2, 10));
    intake.bytes(chunk(4, 20));
    intake.bytes(chunk(6, 30));
    assertThat(queue.poll()).isInstanceOf(LinkEvent.Bytes.class);
    intake.bytes(chunk(8, 40));
    assertThat(queue.poll()).isEqualTo(new LinkEvent.Dropped(0, 20, 10, 5));
    intake.bytes(chunk(2, 50));
    // The fourth chunk came while the loss was being told: it is a loss of its own.
    assertThat(queue.poll()).isEqualTo(new LinkEvent.Dropped(0, 40, 8, 4));
  }

  @Test
  void bytes_afterTheEnd_areLetGoWithoutWaiting() {
    ArrayBlockingQueue<LinkEvent> queue = new ArrayBlockingQueue<>(1);
    Intake intake = new Intake(0, queue, bytes -> 1, Long.MAX_VALUE);
    intake.bytes(chunk(1, 1));
    intake.end();
    intake.bytes(chunk(1, 2));
    intake.lost(3, "gone");
    assertThat(queue).hasSize(1);
  }

  private static Chunk chunk(int length, long nanos) {
    return new Chunk(new byte[length], nanos);
  }
}
