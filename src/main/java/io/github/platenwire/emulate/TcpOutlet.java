package io.github.platenwire.emulate;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * An emulated serial server: listens on a TCP port and sends to one client at a time; the next one
 * is served when the present one has left. Bytes sent while nobody listens are lost and counted, as
 * on a serial line. What a client sends can be received; where nobody does, it is passed over. A
 * client that ends its own sending counts as having left.
 *
 * <p>One thread sends; any thread may wait for a client or ask for counts.
 */
public final class TcpOutlet implements TwoWayOutlet {
  private static final long FAREWELL_MILLIS = 2000;
  private static final long RECEIVE_MILLIS = 100;
  private static final int MOST_RECEIVED = 64;
  private static final long RETRY_NANOS = 50_000_000;

  private final ServerSocket server;
  private final Thread door;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition came = lock.newCondition();

  /** The client being served; guarded by {@code lock}. */
  private @Nullable Socket client;

  private volatile boolean closing;
  private final AtomicLong bytesUnheard = new AtomicLong();
  private final BlockingQueue<byte[]> received = new ArrayBlockingQueue<>(MOST_RECEIVED);

  private TcpOutlet(ServerSocket server) {
    this.server = server;
    this.door = new Thread(this::serve, "platenwire-emulate-tcp-" + server.getLocalPort());
    this.door.setDaemon(true);
  }

  /**
   * Listens on this machine only.
   *
   * @param port 0 for any free one
   * @throws IOException if the port cannot be had
   */
  public static TcpOutlet listen(int port) throws IOException {
    return listen(InetAddress.getLoopbackAddress(), port);
  }

  /**
   * Listens on an address of this machine.
   *
   * @param address which one
   * @param port 0 for any free one
   * @throws IOException if the port cannot be had; the message says what to do
   */
  public static TcpOutlet listen(InetAddress address, int port) throws IOException {
    ServerSocket server = new ServerSocket();
    try {
      server.setReuseAddress(true);
      server.bind(new InetSocketAddress(address, port), /* backlog= */ 4);
    } catch (IOException e) {
      server.close();
      throw new IOException(
          "cannot listen on "
              + address.getHostAddress()
              + ":"
              + port
              + " ("
              + e.getMessage()
              + "); choose another port, or 0 for any free one",
          e);
    }
    TcpOutlet outlet = new TcpOutlet(server);
    outlet.door.start();
    return outlet;
  }

  /** The port it listens on. */
  public int port() {
    return server.getLocalPort();
  }

  /** Address and port as a client writes them, such as {@code 127.0.0.1:40123}. */
  public String address() {
    String host = server.getInetAddress().getHostAddress();
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + port();
  }

  /** Bytes that were sent while nobody listened, or to a client that had just left. */
  public long bytesUnheard() {
    return bytesUnheard.get();
  }

  /**
   * Waits until a client is there.
   *
   * @param limit how long at most
   * @return whether one is there
   * @throws InterruptedException if the waiting thread is interrupted
   */
  public boolean awaitClient(Duration limit) throws InterruptedException {
    return await(/* present= */ true, limit);
  }

  /** Waits until no client is there, as {@link #awaitClient} waits for one. */
  public boolean awaitNoClient(Duration limit) throws InterruptedException {
    return await(/* present= */ false, limit);
  }

  private boolean await(boolean present, Duration limit) throws InterruptedException {
    long remaining = limit.toNanos();
    lock.lock();
    try {
      while ((client != null) != present && remaining > 0) {
        remaining = came.awaitNanos(remaining);
      }
      return (client != null) == present;
    } finally {
      lock.unlock();
    }
  }

  @Override
  public byte[] receive() throws IOException {
    if (closing) {
      throw new IOException("the emulated serial server is closed");
    }
    try {
      byte[] came = received.poll(RECEIVE_MILLIS, TimeUnit.MILLISECONDS);
      return came == null ? new byte[0] : came;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new byte[0];
    }
  }

  @Override
  public void send(byte[] bytes, int from, int length, long emulatedNanos) throws IOException {
    if (closing) {
      throw new IOException("the emulated serial server is closed");
    }
    Socket present = present();
    if (present == null || !sent(present, bytes, from, length)) {
      bytesUnheard.addAndGet(length);
    }
  }

  private static boolean sent(Socket to, byte[] bytes, int from, int length) {
    try {
      to.getOutputStream().write(bytes, from, length);
      return true;
    } catch (IOException clientLeft) {
      closeQuietly(to); // makes the door thread see that it has left
      return false;
    }
  }

  /** Ends the sending: the client may read to the end, for two seconds at most. */
  @Override
  public void close() throws IOException {
    closing = true;
    server.close();
    Socket present = present();
    if (present != null) {
      try {
        present.shutdownOutput();
      } catch (IOException alreadyGone) {
        closeQuietly(present);
      }
    }
    try {
      TimeUnit.MILLISECONDS.timedJoin(door, FAREWELL_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (present != null) {
      closeQuietly(present);
    }
  }

  private @Nullable Socket present() {
    lock.lock();
    try {
      return client;
    } finally {
      lock.unlock();
    }
  }

  private void present(@Nullable Socket now) {
    lock.lock();
    try {
      client = now;
      came.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** The door thread: one client after the other, until the server socket is closed. */
  private void serve() {
    while (!closing) {
      try (Socket accepted = server.accept()) {
        serve(accepted);
      } catch (IOException noClient) {
        if (!closing) {
          LockSupport.parkNanos(RETRY_NANOS); // the system has no socket to give just now
        }
      }
    }
  }

  private void serve(Socket accepted) {
    try {
      accepted.setTcpNoDelay(true);
      present(accepted);
      if (!closing) {
        readUntilItLeaves(accepted.getInputStream());
      }
    } catch (IOException left) {
      // Cut off by the client or by the sender: it has left either way.
    } finally {
      present(null);
    }
  }

  private void readUntilItLeaves(InputStream input) throws IOException {
    byte[] buffer = new byte[256];
    int got = input.read(buffer);
    while (got >= 0) {
      if (!received.offer(Arrays.copyOf(buffer, got))) {
        received.poll(); // a device that only talks: the oldest goes
      }
      got = input.read(buffer);
    }
  }

  private static void closeQuietly(Socket socket) {
    try {
      socket.close();
    } catch (IOException ignored) {
      // Nothing is left to be saved on a connection that is given up.
    }
  }
}
