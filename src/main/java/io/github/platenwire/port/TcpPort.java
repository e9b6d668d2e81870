package io.github.platenwire.port;

import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.NoRouteToHostException;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.util.Arrays;
import java.util.Optional;

/** A serial line behind a server that passes its bytes through TCP. As thread-safe as a port is. */
final class TcpPort implements Port {
  private static final int CONNECT_MILLIS = 5_000;
  private static final int READ_MILLIS = 100;
  private static final int BUFFER_BYTES = 1 << 16;

  private final String address;
  private final MonotonicClock clock;
  private final Socket socket;
  private final InputStream in;
  private final byte[] buffer = new byte[BUFFER_BYTES];
  private volatile boolean closing;

  private TcpPort(String address, Socket socket, MonotonicClock clock) throws IOException {
    this.address = address;
    this.socket = socket;
    this.clock = clock;
    in = socket.getInputStream();
  }

  static Port open(PortAddress.Server server, MonotonicClock clock) throws PortException {
    InetSocketAddress place = new InetSocketAddress(server.host(), server.port());
    if (place.isUnresolved()) {
      throw new PortException(
          PortException.Reason.MISSING,
          server.text()
              + ": no host is known by the name "
              + server.host()
              + ". Check its spelling, or write the server's numeric address");
    }
    Socket socket = new Socket();
    try {
      socket.connect(place, CONNECT_MILLIS);
      socket.setSoTimeout(READ_MILLIS);
      socket.setKeepAlive(true);
      socket.setTcpNoDelay(true);
      return new TcpPort(server.text(), socket, clock);
    } catch (IOException e) {
      closeQuietly(socket);
      throw refused(server, e);
    }
  }

  private static PortException refused(PortAddress.Server server, IOException e) {
    if (e instanceof SocketTimeoutException) {
      return new PortException(
          PortException.Reason.MISSING,
          server.text()
              + ": no answer within "
              + CONNECT_MILLIS / 1000
              + " s. Is the server switched on and on this network?");
    }
    if (e instanceof ConnectException || e instanceof NoRouteToHostException) {
      return new PortException(
          PortException.Reason.MISSING,
          server.text()
              + ": nothing answers at port "
              + server.port()
              + " of that host ("
              + e.getMessage()
              + "). Check the port number, and that the server is switched on and not held by"
              + " another program");
    }
    return new PortException(
        PortException.Reason.UNUSABLE, server.text() + ": cannot be reached: " + e.getMessage());
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public Optional<Chunk> read() throws IOException {
    int count;
    try {
      count = in.read(buffer);
    } catch (SocketTimeoutException e) {
      return Optional.empty();
    } catch (IOException e) {
      throw lost(String.valueOf(e.getMessage()));
    }
    if (count < 0) {
      throw lost("the server ended the connection");
    }
    return Optional.of(new Chunk(Arrays.copyOf(buffer, count), clock.nanos()));
  }

  @Override
  public boolean hasBytes() throws IOException {
    try {
      return in.available() > 0;
    } catch (IOException e) {
      throw lost(String.valueOf(e.getMessage()));
    }
  }

  private LinkLostException lost(String why) {
    return new LinkLostException(address + ": " + (closing ? "closed by this program" : why));
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    try {
      socket.getOutputStream().write(bytes);
    } catch (IOException e) {
      throw lost(String.valueOf(e.getMessage()));
    }
  }

  @Override
  public void close() {
    closing = true;
    closeQuietly(socket);
  }

  private static void closeQuietly(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // nothing is left to give back
    }
  }
}
