package io.github.platenwire.port;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps what a listener throws from ending the link's thread. Logs the first failure and then each
 * time their number has doubled. Confined to the link's thread.
 */
final class GuardedListener implements LinkListener {
  private static final Logger LOG = LoggerFactory.getLogger(GuardedListener.class);

  private final String name;
  private final LinkListener listener;
  private long failures;

  GuardedListener(String name, LinkListener listener) {
    this.name = name;
    this.listener = listener;
  }

  @Override
  public void bytes(Chunk chunk) {
    guarded(() -> listener.bytes(chunk));
  }

  @Override
  public void lost(long atNanos, String why) {
    guarded(() -> listener.lost(atNanos, why));
  }

  @Override
  public void back(long atNanos) {
    guarded(() -> listener.back(atNanos));
  }

  private void guarded(Runnable call) {
    try {
      call.run();
    } catch (RuntimeException | Error e) {
      failures++;
      if (Long.bitCount(failures) == 1) {
        LOG.error("link {}: its listener failed, {} times so far", name, failures, e);
      }
    }
  }
}
