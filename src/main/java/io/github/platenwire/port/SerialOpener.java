package io.github.platenwire.port;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import io.github.platenwire.reading.MonotonicClock;
import java.io.File;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Opens a serial port of this machine. Names and links are resolved anew at each call, so that a
 * device that was plugged in again under another name is found through its link.
 */
final class SerialOpener implements PortOpener {
  private static final Logger LOG = LoggerFactory.getLogger(SerialOpener.class);
  private static final int READ_MILLIS = 100;
  private static final int SEND_QUEUE_BYTES = 1 << 12;
  private static final int RECEIVE_QUEUE_BYTES = 1 << 16;
  private static final boolean HAS_DEVICE_FILES = File.separatorChar == '/';

  /**
   * Devices open in this program. The library refuses a second opening too, but then gives the
   * error number of some earlier call.
   */
  private static final Set<Path> OPEN = ConcurrentHashMap.newKeySet();

  private final String address;
  private final LineSettings settings;
  private final MonotonicClock clock;

  SerialOpener(String address, LineSettings settings, MonotonicClock clock) {
    this.address = address;
    this.settings = settings;
    this.clock = clock;
  }

  @Override
  public Port open() throws PortException {
    Path device = HAS_DEVICE_FILES ? realDevice() : Path.of(address.toUpperCase(Locale.ROOT));
    SerialLibrary.need();
    if (!OPEN.add(device)) {
      throw SerialFailure.busyHere(address);
    }
    try {
      SerialPort port = opened(device);
      warnOfOthers(device);
      return new SerialLine(address, port, clock, () -> OPEN.remove(device));
    } catch (PortException | RuntimeException e) {
      OPEN.remove(device);
      throw e;
    }
  }

  private SerialPort opened(Path device) throws PortException {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(device.toString());
    } catch (SerialPortInvalidPortException e) {
      throw SerialFailure.missing(address, device);
    }
    configure(port);
    // one at a time: the library keeps a single error number for all failed opens
    synchronized (OPEN) {
      // no sleep before opening: the library's 200 ms would delay every return of a link
      if (!port.openPort(/* safetySleepTime= */ 0, SEND_QUEUE_BYTES, RECEIVE_QUEUE_BYTES)) {
        throw SerialFailure.ofCode(address, device, settings, port.getLastErrorCode());
      }
    }
    return port;
  }

  /**
   * The device file itself. The library is never given a name to guess at: if a path is not there
   * it would open a port of the same last name elsewhere.
   */
  private Path realDevice() throws PortException {
    Path named = Path.of(address.contains("/") ? address : "/dev/" + address);
    Path device;
    try {
      device = named.toRealPath();
    } catch (AccessDeniedException e) {
      throw new PortException(
          PortException.Reason.NOT_PERMITTED,
          address + ": a folder on the way to it may not be entered by this user");
    } catch (IOException e) {
      throw SerialFailure.missing(address, named);
    }
    if (!DeviceFile.isCharacterDevice(device)) {
      throw SerialFailure.notAPort(
          address, Files.isDirectory(device) ? "is a folder, no port" : "is a file, no port");
    }
    return device;
  }

  private void configure(SerialPort port) {
    port.setComPortParameters(
        settings.baud(), settings.dataBits(), stopBits(), parity(), /* useRS485Mode= */ false);
    port.setFlowControl(flow());
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
    port.clearDTR();
    if (settings.flow() != LineSettings.Flow.HARDWARE) {
      port.clearRTS();
    }
  }

  private int stopBits() {
    return settings.stopBits() == 1 ? SerialPort.ONE_STOP_BIT : SerialPort.TWO_STOP_BITS;
  }

  private int parity() {
    return switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
    };
  }

  private int flow() {
    return switch (settings.flow()) {
      case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
      case HARDWARE -> SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
      case SOFTWARE ->
          SerialPort.FLOW_CONTROL_XONXOFF_IN_ENABLED | SerialPort.FLOW_CONTROL_XONXOFF_OUT_ENABLED;
    };
  }

  /**
   * The port's lock is advisory: a program that takes no notice of it takes bytes from the line.
   */
  private void warnOfOthers(Path device) {
    List<DeviceFile.Holder> others =
        DeviceFile.holders(device).stream().filter(holder -> !holder.isThisProgram()).toList();
    if (!others.isEmpty()) {
      LOG.warn(
          "{} is also open in {}: a program that reads it takes bytes away from the record",
          address,
          others.stream().map(DeviceFile.Holder::words).collect(Collectors.joining(", ")));
    }
  }
}
