package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChecksumTest {
  private static final byte[] DIGITS = "123456789".getBytes(StandardCharsets.US_ASCII);

  /**
   * Check values of the digits 1 to 9. The first four: documentation of the Rust library
   * crc-catalog; IBM-3740: help page of a controller's CRC16_generic; the rest from memory and
   * worked out again.
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "CRC-16/MODBUS, 16, 8005, FFFF, true, 0000, 4B37",
    "CRC-16/ARC, 16, 8005, 0000, true, 0000, BB3D",
    "CRC-16/XMODEM, 16, 1021, 0000, false, 0000, 31C3",
    "CRC-16/KERMIT, 16, 1021, 0000, true, 0000, 2189",
    "CRC-16/IBM-3740, 16, 1021, FFFF, false, 0000, 29B1",
    "CRC-16/IBM-SDLC, 16, 1021, FFFF, true, FFFF, 906E",
    "CRC-16/SPI-FUJITSU, 16, 1021, 1D0F, false, 0000, E5CC",
    "CRC-16/GENIBUS, 16, 1021, FFFF, false, FFFF, D64E",
    "CRC-16/MCRF4XX, 16, 1021, FFFF, true, 0000, 6F91",
    "CRC-16/USB, 16, 8005, FFFF, true, FFFF, B4C8",
    "CRC-16/DNP, 16, 3D65, 0000, true, FFFF, EA82",
    "CRC-8/SMBUS, 8, 07, 00, false, 00, F4",
    "CRC-8/MAXIM-DOW, 8, 31, 00, true, 00, A1"
  })
  void over_digits_isThePublishedCheckValue(
      String name, int bits, String poly, String init, boolean reflect, String xor, String check) {
    Crc crc = new Crc(bits, hex(poly), hex(init), reflect, reflect, hex(xor));
    assertThat(crc.over(DIGITS, 0, DIGITS.length)).isEqualTo(hex(check));
  }

  /** Numbers in the order as sent, low byte first: page of the Python package crcmodbus. */
  @ParameterizedTest
  @CsvSource({"010203040506070809, 0EB2", "030104, 8193", "198956, 47A9"})
  void modbus_publishedBytes_giveThePublishedCrc(String bytes, String sent) {
    byte[] data = Hex.bytes(bytes);
    int crc = Crc.MODBUS.over(data, 0, data.length);
    assertThat(((crc & 0xFF) << 8) | (crc >> 8)).isEqualTo(hex(sent));
  }

  /** The first three: pymodbus, test/framer/test_framer.py; the others: four device manuals. */
  @ParameterizedTest
  @CsvSource({
    "1234234534564567, 1C",
    "0003007C0002, 7F",
    "028401, 79",
    "0A0303E90002, 05",
    "010302010001, F8",
    "010304010001, F6",
    "010321020002, D7"
  })
  void lrc_publishedBytes_giveThePublishedValue(String bytes, String lrc) {
    byte[] data = Hex.bytes(bytes);
    assertThat(Checksum.LRC.over(data, 0, data.length)).isEqualTo(hex(lrc));
    assertThat(Checksum.SUM_8.over(data, 0, data.length) + hex(lrc) & 0xFF).isZero();
  }

  /** NMEA 0183 sentences: from memory; em38 nmea_check; nmeaChksum; two pages with examples. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '*',
      value = {
        "GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47",
        "GPGGA,015808.00,2726.53758,S,15126.05255,E,1,08,1.0,365.1,M,39.5,M,,*79",
        "PSRF103,00,01,00,01*25",
        "GNGLL,2239.37849,N,11400.75600,E,123254.00,A,A*7F",
        "GPGGA,000003.071,7900.56904,N,16607.52019,W,1,09,0.8,4.64,M,,,,*26"
      })
  void xor_publishedSentence_givesItsChecksum(String sentence, String check) {
    byte[] data = sentence.getBytes(StandardCharsets.US_ASCII);
    assertThat(Checksum.XOR.over(data, 0, data.length)).isEqualTo(hex(check));
  }

  private static int hex(String text) {
    return Integer.parseInt(text, 16);
  }
}
