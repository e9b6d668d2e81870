package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.reading.Quality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ModbusFrameTest {
  private static DeviceDefinition device(int unit, int count, String fields) {
    return Definitions.parse(
        """
        format = "platenwire-device 1"
        name = "box"
        title = "Box"
        kind = "modbus-rtu"
        [modbus]
        unit = %d
        registers = "holding"
        first = 0
        count = %d
        %s
        """
            .formatted(unit, count, fields));
  }

  private static String number(String name, String kind, int register, String order) {
    return "[fields.%s]\nkind=\"%s\"\nregister=%d\norder=\"%s\"\nunit=\"N\"\n"
        .formatted(name, kind, register, order);
  }

  /**
   * 41 12: example of Modbus over Serial Line V1.02, from memory. 76 87: classic example, from
   * memory. The next eight: pymodbus, test/framer/test_framer.py. The others: pages of makers and
   * libraries that show one frame each. All worked out again.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "02 07 41 12",
        "11 03 00 6B 00 03 76 87",
        "11 03 06 AE 41 56 52 43 40 49 AD",
        "11 03 00 7C 00 02 07 43",
        "11 03 04 00 8D 00 8E FB BD",
        "00 03 00 7C 00 02 04 02",
        "FF 03 00 7C 00 02 10 0D",
        "FF 03 04 00 8D 00 8E F5 B3",
        "02 01 01 00 51 CC",
        "00 83 02 91 31",
        "FE 04 00 03 00 01 D5 C5",
        "01 03 00 00 00 02 C4 0B",
        "01 03 00 02 00 01 25 CA",
        "01 06 10 BC 30 39 98 FC",
        "01 04 02 FF FF B8 80",
        "01 06 02 00 00 64 89 99",
        "01 03 00 00 00 0A C5 CD"
      })
  void sealed_publishedFrame_endsInItsCrc(String hex) {
    byte[] frame = Hex.bytes(hex);
    byte[] unsealed = frame.clone();
    unsealed[frame.length - 1] = 0;
    unsealed[frame.length - 2] = 0;
    assertThat(ModbusFrame.sealed(unsealed)).isEqualTo(frame);
  }

  @ParameterizedTest
  @CsvSource({
    "17, 3, 107, 3, 11 03 00 6B 00 03 76 87",
    "17, 3, 124, 2, 11 03 00 7C 00 02 07 43",
    "254, 4, 3, 1, FE 04 00 03 00 01 D5 C5",
    "1, 3, 0, 2, 01 03 00 00 00 02 C4 0B"
  })
  void request_publishedExample_isThatFrame(
      int unit, int function, int first, int count, String hex) {
    assertThat(new ModbusFrame(unit, function, first, count).request()).isEqualTo(Hex.bytes(hex));
  }

  @Test
  void decode_publishedAnswer_givesItsRegisters() {
    DeviceDefinition device =
        device(17, 2, number("a", "integer", 0, "AB") + number("b", "integer", 1, "AB"));
    Frames frames = Frames.of(device, Hex.latin1("11 03 04 00 8D 00 8E FB BD"));
    assertThat(frames.values).containsExactly(141.0, 142.0);
    assertThat(frames.qualities).containsOnly(Quality.OK);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "11 03 04 00 8D 00 8E FB BC", // CRC
        "12 03 04 00 8D 00 8E C8 BD", // unit
        "11 04 04 00 8D 00 8E FA 0A", // function
        "11 03 00 7C 00 02 07 43", // the request, echoed
        "11 83 02 C1 34", // exception: no such register
        "11 83 02 91 21"
      })
  void decode_anythingElse_isGarbledAsReceived(String hex) {
    DeviceDefinition device = device(17, 2, number("a", "integer", 0, "AB"));
    FrameDecoder decoder = device.newDecoder();
    Frames frames = new Frames();
    Frames.feed(decoder, Hex.latin1(hex), frames);
    decoder.cut(frames);
    assertThat(frames.values).isEmpty();
    String all =
        String.join("", frames.found.stream().map(f -> f.replace(" -> garbled", "")).toList());
    assertThat(all).isEqualTo(Hex.latin1(hex));
  }

  @Test
  void fault_exception_isSaidInWords() {
    DeviceDefinition device = device(17, 2, number("a", "integer", 0, "AB"));
    byte[] refused = ModbusFrame.sealed(Hex.bytes("11 83 02 00 00"));
    assertThat(device.fault(refused))
        .isEqualTo(new Fault(2, "the device refused with exception 2: it has no such register"));
    assertThat(device.fault(Hex.bytes("11 03 04 00 8D 00 8E FB BC")).at()).isEqualTo(7);
    assertThat(device.fault(Hex.bytes("11 04 04")).why()).isEqualTo("the function is 4, not 3");
  }

  /**
   * 123456: libmodbus, tests/unit-test.h.in and the pages modbus_get_float_abcd, _badc, _cdab and
   * _dcba. 916.540649: libmodbus, modbus_get_float. -118.625: textbook example, from memory. The
   * others worked out.
   */
  @ParameterizedTest
  @CsvSource({
    "123456.0, 47F12000, 200047F1, F1470020, 0020F147",
    "916.540649, 4465229A, 229A4465, 65449A22, 9A226544",
    "1.0, 3F800000, 00003F80, 803F0000, 0000803F",
    "-118.625, C2ED4000, 4000C2ED, EDC20040, 0040EDC2",
    "100.0, 42C80000, 000042C8, C8420000, 0000C842",
    "25.5, 41CC0000, 000041CC, CC410000, 0000CC41",
    "3.1415927, 40490FDB, 0FDB4049, 4940DB0F, DB0F4940",
    "0.1, 3DCCCCCD, CCCD3DCC, CC3DCDCC, CDCCCC3D",
    "12345.678, 4640E6B6, E6B64640, 4046B6E6, B6E64046"
  })
  void decode_floatInEveryOrder_isThePublishedValue(
      float value, String abcd, String cdab, String badc, String dcba) {
    String[] orders = {"ABCD", "CDAB", "BADC", "DCBA"};
    String[] words = {abcd, cdab, badc, dcba};
    for (int i = 0; i < orders.length; i++) {
      DeviceDefinition device = device(1, 2, number("a", "float", 0, orders[i]));
      byte[] frame = ModbusFrame.sealed(Hex.bytes("010304" + words[i] + "0000"));
      Frames frames = new Frames();
      device.newDecoder().accept(frame, 0, frame.length, 0, frames);
      assertThat(frames.values).as(orders[i]).containsExactly((double) value);
    }
  }
}
