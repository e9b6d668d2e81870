package io.github.platenwire.recorder;

import com.ghgande.j2mod.modbus.io.AbstractModbusTransport;
import com.ghgande.j2mod.modbus.io.ModbusRTUTransport;
import com.ghgande.j2mod.modbus.net.AbstractSerialConnection;
import com.ghgande.j2mod.modbus.net.ModbusSerialListener;
import com.ghgande.j2mod.modbus.procimg.ProcessImage;
import com.ghgande.j2mod.modbus.procimg.Register;
import com.ghgande.j2mod.modbus.procimg.SimpleProcessImage;
import com.ghgande.j2mod.modbus.procimg.SimpleRegister;
import io.github.platenwire.emulate.PseudoTerminal;
import java.io.IOException;
import java.util.Arrays;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * A Modbus RTU slave that is not ours: requests are parsed, registers read and answers framed by
 * j2mod. Only its way to the bytes is ours, the device's side of a pseudo-terminal. It holds a load
 * as a float in registers 0 and 1 and a gauge in 2 and 3, another pair for each request.
 */
final class ForeignSlave implements AutoCloseable {
  /** What it was asked for, in order: load in newtons, gauge in tenths of a micrometre. */
  record Told(float loadNewtons, int gaugeTenths) {}

  final Queue<Told> told = new ConcurrentLinkedQueue<>();
  private final Line line;
  private final ModbusSerialListener listener;
  private final Thread thread;

  ForeignSlave(PseudoTerminal terminal) {
    line = new Line(terminal);
    SimpleProcessImage image = new Readings();
    listener =
        new ModbusSerialListener(line) {
          @Override
          public ProcessImage getProcessImage(int unit) {
            return unit == 1 ? image : null;
          }
        };
    listener.setListening(true);
    thread = new Thread(listener, "foreign-slave");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() {
    listener.setListening(false);
    line.close();
  }

  private final class Readings extends SimpleProcessImage {
    private int asked;

    @Override
    public synchronized Register[] getRegisterRange(int first, int count) {
      float load = 1000 + 12.5f * asked;
      int gauge = -400 + 7 * asked;
      asked++;
      told.add(new Told(load, gauge));
      int bits = Float.floatToIntBits(load);
      int[] all = {bits >>> 16, bits & 0xFFFF, gauge >>> 16, gauge & 0xFFFF};
      return Arrays.stream(all, first, first + count)
          .mapToObj(SimpleRegister::new)
          .toArray(Register[]::new);
    }
  }

  /** The device's side of a pseudo-terminal, as j2mod wants a serial line. */
  private static final class Line extends AbstractSerialConnection {
    private final PseudoTerminal terminal;
    private final ModbusRTUTransport transport = new ModbusRTUTransport();
    private volatile boolean open;

    Line(PseudoTerminal terminal) {
      this.terminal = terminal;
    }

    @Override
    public void open() throws IOException {
      open = true;
      transport.setCommPort(this);
    }

    @Override
    public AbstractModbusTransport getModbusTransport() {
      return transport;
    }

    @Override
    public int readBytes(byte[] buffer, int count) {
      int done = 0;
      byte[] one = new byte[1];
      while (done < count && open) {
        try {
          if (terminal.read(one) == 1) {
            buffer[done++] = one[0];
          }
        } catch (IOException closed) {
          open = false;
        }
      }
      return open ? done : -1;
    }

    @Override
    public int writeBytes(byte[] buffer, int count) {
      try {
        terminal.write(buffer, 0, count);
        return count;
      } catch (IOException closed) {
        return -1;
      }
    }

    /** Nothing waits beyond what is read: j2mod asks only before it throws input away. */
    @Override
    public int bytesAvailable() {
      return 0;
    }

    @Override
    public void close() {
      open = false;
    }

    @Override
    public int getBaudRate() {
      return 115_200;
    }

    @Override
    public int getNumDataBits() {
      return 8;
    }

    @Override
    public int getNumStopBits() {
      return 1;
    }

    @Override
    public int getParity() {
      return NO_PARITY;
    }

    @Override
    public String getPortName() {
      return terminal.path();
    }

    @Override
    public String getDescriptivePortName() {
      return terminal.path();
    }

    @Override
    public void setComPortTimeouts(int mode, int reading, int writing) {}

    @Override
    public boolean isOpen() {
      return open;
    }

    @Override
    public int getTimeout() {
      return 0;
    }

    @Override
    public void setTimeout(int timeout) {}

    @Override
    public Set<String> getCommPorts() {
      return Set.of(terminal.path());
    }
  }
}
