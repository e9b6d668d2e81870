package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NamesTest {
  @ParameterizedTest
  @CsvSource({
    "RA-07-2, RA-07-2",
    "RA 07/2, RA_07_2",
    "a.b_c-D, a.b_c-D",
    "../../etc, _._.._etc",
    "Prüf-1, Pruf-1",
    "½ core, 1_2_core",
    "試験, __",
    "name., name_",
    "'a:b*c?d\"e<f>g|h\\i', a_b_c_d_e_f_g_h_i",
  })
  void forFile_name_keepsWhatEverySystemTakes(String name, String expected) {
    assertThat(Names.forFile(name)).isEqualTo(expected);
  }

  @Test
  void forFile_empty_isNotEmpty() {
    assertThat(Names.forFile("")).isEqualTo("_");
  }

  /**
   * Names kept for devices: Windows documentation, "Naming Files, Paths, and Namespaces", from
   * memory.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {"CON", "prn", "Aux", "NUL", "COM1", "com9", "LPT1", "lpt9", "con.txt", "NUL.a.b"})
  void forFile_reservedName_isChanged(String name) {
    assertThat(Names.forFile(name)).isEqualTo("_" + name);
  }

  @ParameterizedTest
  @ValueSource(strings = {"CONE", "COM10", "COM", "LPT", "xNUL"})
  void forFile_nearlyReservedName_stays(String name) {
    assertThat(Names.forFile(name)).isEqualTo(name);
  }

  /** POSIX portable file name characters: IEEE Std 1003.1, 3.265, from memory. */
  @Property(tries = 2000)
  void forFile_anything_isPortable(@ForAll String name) {
    String safe = Names.forFile(name);
    assertThat(safe).matches("[A-Za-z0-9_-]([A-Za-z0-9._-]*[A-Za-z0-9_-])?");
    assertThat(safe.length()).isBetween(1, Names.LONGEST);
  }

  @ParameterizedTest
  @CsvSource({
    "frame-2, ; did you mean 'frame-1'?",
    "FRAME-TCP, ; did you mean 'frame-tcp'?",
    "x, '; there are: frame-1, frame-tcp'",
  })
  void suggestion_unknownName_helps(String name, String expected) {
    assertThat(Names.suggestion(name, List.of("frame-tcp", "frame-1"))).isEqualTo(expected);
  }

  @Test
  void suggestion_manyKnown_listsTwelve() {
    List<String> known = java.util.stream.IntStream.range(10, 30).mapToObj(i -> "n" + i).toList();
    assertThat(Names.suggestion("something", known))
        .isEqualTo(
            "; there are: n10, n11, n12, n13, n14, n15, n16, n17, n18, n19, n20, n21 and 8 more");
    assertThat(Names.suggestion("something", List.of("a"))).isEqualTo("; there is: a");
    assertThat(Names.suggestion("something", List.of())).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "-0.0, 0", "1500, 1500", "1e7, 10000000", "0.001, 0.001", "-2.5, -2.5"})
  void plain_number_hasNoExponent(double value, String expected) {
    assertThat(Names.plain(value)).isEqualTo(expected);
  }
}
