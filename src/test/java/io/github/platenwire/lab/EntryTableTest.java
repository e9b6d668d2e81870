package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EntryTableTest {
  @TempDir Path folder;

  private List<EntryTable.Entry> read(String text, Quantity quantity) throws Exception {
    return EntryTable.read(Files.writeString(folder.resolve("depths.csv"), text), quantity);
  }

  @Test
  void read_semicolonsAndCommas_givesSecondsAndValues() throws Exception {
    assertThat(read("Bild;Time (min);Depth (mm)\n1;0;0\n2;30;10,5\n3;60;14,6\n", Quantity.LENGTH))
        .containsExactly(
            new EntryTable.Entry(2, 0, "0", Unit.MILLIMETRE),
            new EntryTable.Entry(3, 1800, "10.5", Unit.MILLIMETRE),
            new EntryTable.Entry(4, 3600, "14.6", Unit.MILLIMETRE));
  }

  @Test
  void read_massesInKilograms_keepTheUnitOfTheirColumn() throws Exception {
    assertThat(read("time_h,mass_kg\n0,1.5\n1.5,1.6\n", Quantity.MASS))
        .extracting(EntryTable.Entry::seconds, EntryTable.Entry::unit)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(0.0, Unit.KILOGRAM),
            org.assertj.core.groups.Tuple.tuple(5400.0, Unit.KILOGRAM));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "time,depth_mm | 0,1 | row 1 | time_min",
        "time_s,depth | 0,1 | row 1 | depth_mm",
        "time_s,time_min,depth_mm | 0,0,1 | row 1 | more than one",
        "time_s,depth_mm | 0,deep | row 2 | depth_mm",
        "time_s,depth_mm | -5,1 | row 2 | time_s",
        "time_s,depth_mm | 5 | row 2 | depth_mm",
      })
  void read_wrongTable_saysWhereAndWhat(String head, String row, String where, String what) {
    assertThatThrownBy(() -> read(head + "\n" + row + "\n", Quantity.LENGTH))
        .isInstanceOf(LabException.class)
        .hasMessageContaining("depths.csv")
        .hasMessageContaining(where)
        .hasMessageContaining(what);
  }

  @Test
  void read_headOnly_isRefused() {
    assertThatThrownBy(() -> read("time_s,depth_mm\n", Quantity.LENGTH))
        .hasMessageContaining("no rows");
  }
}
