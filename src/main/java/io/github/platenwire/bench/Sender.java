package io.github.platenwire.bench;

import java.io.IOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** A thread that sends as a device would; its failure is told to whoever waits for it. */
final class Sender {
  private final FutureTask<Void> task;
  private final Thread thread;

  /** Sends bytes. */
  @FunctionalInterface
  interface Sending {
    /** Sends everything. */
    void send() throws IOException;
  }

  Sender(Sending sending) {
    task =
        new FutureTask<>(
            () -> {
              sending.send();
              return null;
            });
    thread = new Thread(task, "bench-device");
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  long threadId() {
    return thread.getId();
  }

  /**
   * Waits until everything is sent.
   *
   * @throws IOException if it could not be
   */
  void await() throws IOException, InterruptedException {
    try {
      task.get();
    } catch (ExecutionException e) {
      throw new IOException("the emulated device ended: " + e.getCause(), e.getCause());
    }
  }
}
