package io.github.platenwire.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PortAddressTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/dev/ttyUSB0",
        "COM3",
        "ttyACM1",
        "/dev/pts/5",
        "/dev/serial/by-id/usb-frame-if00-port0",
        "./load",
        "tcp",
        "replay"
      })
  void parse_pathOrName_serialPort(String text) {
    assertThat(PortAddress.parse(text)).isEqualTo(new PortAddress.Serial(text));
  }

  @ParameterizedTest
  @CsvSource({
    "tcp://gauges:4001, gauges, 4001",
    "TCP://10.0.0.7:1, 10.0.0.7, 1",
    "tcp://[fe80::1]:65535, fe80::1, 65535"
  })
  void parse_serialServer_hostAndPort(String text, String host, int port) {
    assertThat(PortAddress.parse(text)).isEqualTo(new PortAddress.Server(text, host, port));
  }

  @Test
  void parse_byteLog_file() {
    assertThat(PortAddress.parse("replay:logs/a b.bytes"))
        .isEqualTo(new PortAddress.ByteLog("replay:logs/a b.bytes", Path.of("logs/a b.bytes")));
  }

  @ParameterizedTest
  @CsvSource({
    "'', empty",
    "'  ', empty",
    "' COM3', spaces around",
    "'COM3\u0007', control character",
    "tcp:host:4001, two slashes",
    "tcp://host, port number is missing",
    "tcp://[::1], port number is missing",
    "tcp://:4001, host is missing",
    "tcp://host:0, 1 to 65535",
    "tcp://host:65536, 1 to 65535",
    "tcp://host:, 1 to 65535",
    "tcp://host:4001/x, 1 to 65535",
    "tcp://::1:4001, brackets",
    "tcp://a b:4001, no host",
    "tcp://me@host:4001, no host",
    "udp://host:4001, udp:// is no kind of port",
    "replay:, file is missing",
    "'replay: ', spaces around",
  })
  void parse_nonsense_saysWhatIsWrong(String text, String said) {
    assertThatThrownBy(() -> PortAddress.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(said)
        .hasMessageContaining("Right would be");
  }
}
