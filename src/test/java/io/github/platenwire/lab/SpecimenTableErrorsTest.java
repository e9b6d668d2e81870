package io.github.platenwire.lab;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.nio.charset.Charset;
import java.time.ZoneId;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class SpecimenTableErrorsTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final String NAMES = "specimen,series,shape";

  private static void assertRefused(byte[] bytes, String message) {
    assertThatThrownBy(() -> SpecimenTable.read(bytes, "specimens.csv", BERLIN))
        .isInstanceOf(LabException.class)
        .hasMessage(message);
  }

  private static String number(String column, String cell) {
    return NAMES + "," + column + "\nA,S,cylinder," + cell + "\n";
  }

  private static String cell(String column, String problem) {
    return "specimens.csv, row 2, column " + column + ": " + problem;
  }

  static Stream<Arguments> wrongCells() {
    return Stream.of(
        arguments(
            "diameter_1_mm",
            "hundred",
            "'hundred' is no number; write it with digits only, such as 101.6"),
        arguments(
            "diameter_1_mm",
            "100.1 mm",
            "'100.1 mm' is no number; write it with digits only, such as 101.6"),
        arguments(
            "mass_g",
            "\"1,234\"",
            "'1,234' can be 1234 or 1.234; write 1234, or 1,2340 with one more digit"),
        arguments("mass_g", "\"1,234.5\"", "'1,234.5' has its thousands set off; write it without"),
        arguments("mass_g", "1.234.567", "'1.234.567' has its thousands set off; write it without"),
        arguments("mass_g", "1 234", "'1 234' has its thousands set off; write it without"),
        arguments("mass_g", "1'234", "'1'234' has its thousands set off; write it without"),
        arguments(
            "diameter_1_mm", "NaN", "'NaN' is no number; write it with digits only, such as 101.6"),
        arguments(
            "diameter_1_mm",
            "1e999",
            "'1e999' is no number; write it with digits only, such as 101.6"),
        arguments(
            "diameter_1_mm",
            "10",
            "10 mm is no likely diameter, which is 25 to 600 mm; check the decimal point and the"
                + " unit; 10 in would be likely"),
        arguments(
            "diameter_2_mm",
            "1000",
            "1000 mm is no likely diameter, which is 25 to 600 mm; check the decimal point and the"
                + " unit"),
        arguments(
            "diameter_1_mm",
            "-100",
            "-100 mm is no likely diameter, which is 25 to 600 mm; check the decimal point and the"
                + " unit"),
        arguments(
            "diameter_1_mm",
            "0",
            "0 mm is no likely diameter, which is 25 to 600 mm; check the decimal point and the"
                + " unit"),
        arguments(
            "diameter_1_in",
            "100.2",
            "100.2 in is no likely diameter, which is 0.984 to 23.6 in; check the decimal point and"
                + " the unit; 100.2 mm would be likely"),
        arguments(
            "length_mm",
            "2000",
            "2000 mm is no likely length, which is 10 to 1000 mm; check the decimal point and the"
                + " unit"),
        arguments(
            "mass_g",
            "3.725",
            "3.725 g is no likely mass, which is 50 to 1000000 g; check the decimal point and the"
                + " unit; 3.725 kg would be likely"),
        arguments(
            "mass_kg",
            "3725",
            "3725 kg is no likely mass, which is 0.05 to 1000 kg; check the decimal point and the"
                + " unit; 3725 g would be likely"),
        arguments("age_days", "0", "'0' is no likely age in days, such as 7 or 28"),
        arguments("age_days", "-7", "'-7' is no likely age in days, such as 7 or 28"),
        arguments(
            "age_days", "7 d", "'7 d' is no number; write it with digits only, such as 101.6"),
        arguments("ends", "grond", "'grond' is not known, did you mean 'ground'?"),
        arguments(
            "cast",
            "03/04/2026 09:15",
            "'03/04/2026 09:15' can be 2026-04-03 or 2026-03-04; write the year first, the way"
                + " 2026-11-18 14:30"),
        arguments(
            "cast",
            "3-4-2026 9:15",
            "'3-4-2026 9:15' can be 2026-04-03 or 2026-03-04; write the year first, the way"
                + " 2026-11-18 14:30"),
        arguments(
            "cast",
            "2026-11-18",
            "'2026-11-18' has no time of day; write it the way 2026-11-18 14:30, for the age in"
                + " hours"),
        arguments(
            "cast",
            "18/11/26 14:30",
            "'18/11/26 14:30' is no date and time of day; write it the way 2026-11-18 14:30"),
        arguments(
            "cast",
            "11/18/2026 2:30 PM",
            "'11/18/2026 2:30 PM' is no date and time of day; write it the way 2026-11-18 14:30"),
        arguments(
            "cast",
            "46344.604",
            "'46344.604' is no date and time of day; write it the way 2026-11-18 14:30"),
        arguments(
            "cast", "2026-11-31 14:30", "'2026-11-31 14:30': there is no such date or time of day"),
        arguments(
            "cast", "2026-11-18 24:30", "'2026-11-18 24:30': there is no such date or time of day"),
        arguments(
            "cast", "31/13/2026 10:00", "'31/13/2026 10:00': there is no such date or time of day"),
        arguments(
            "cast",
            "0026-11-18 14:30",
            "'0026-11-18 14:30': the year 0026 is no likely year of casting"),
        // clocks go forward on the last Sunday of March: Directive 2000/84/EC article 2
        arguments(
            "cast",
            "2026-03-29 02:30",
            "'2026-03-29 02:30' does not exist in Europe/Berlin: the clocks were put forward over"
                + " it"));
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("wrongCells")
  void read_wrongCell_saysRowAndColumn(String column, String written, String problem) {
    assertRefused(number(column, written).getBytes(UTF_8), cell(column, problem));
  }

  static Stream<Arguments> wrongTables() {
    return Stream.of(
        arguments("", "specimens.csv: the table is empty; its first row must name the columns"),
        arguments(
            " \n\n", "specimens.csv: the table is empty; its first row must name the columns"),
        arguments(
            "specimen,series\nA,S\n",
            "specimens.csv, row 1: there is no column 'shape'; it is needed, and the first row"
                + " names the columns"),
        arguments(
            "\nseries,shape\n",
            "specimens.csv, row 2: there is no column 'specimen'; it is needed, and the first row"
                + " names the columns"),
        arguments(
            NAMES + ",Notes,notes\n",
            "specimens.csv, row 1: there are two columns 'Notes' and 'notes'; keep one"),
        arguments(
            NAMES + ",diamter_1_mm\n",
            "specimens.csv, row 1: column 'diamter_1_mm' is not known; did you mean"
                + " 'diameter_1_mm'? A column of your own with such a name must begin with x_"),
        arguments(
            NAMES + ",cost\n",
            "specimens.csv, row 1: column 'cost' is not known; did you mean 'cast'? A column of"
                + " your own with such a name must begin with x_"),
        arguments(
            NAMES + ",Length\n",
            "specimens.csv, row 1: column 'Length' is not known; the length is length_mm or"
                + " length_in. A column of your own with such a name must begin with x_"),
        arguments(
            NAMES + ",weight\n",
            "specimens.csv, row 1: column 'weight' is not known; the mass is mass_g, mass_kg or"
                + " mass_lb. A column of your own with such a name must begin with x_"),
        arguments(
            NAMES + ",diameter\n",
            "specimens.csv, row 1: column 'diameter' is not known; diameters are diameter_1_mm,"
                + " diameter_2_mm or diameter_1_in, diameter_2_in. A column of your own with such a"
                + " name must begin with x_"),
        arguments(
            NAMES + ",age\n",
            "specimens.csv, row 1: column 'age' is not known; the planned age is age_days. A column"
                + " of your own with such a name must begin with x_"),
        arguments(
            NAMES + ",cast_time\n",
            "specimens.csv, row 1: column 'cast_time' is not known; the time of casting is cast. A"
                + " column of your own with such a name must begin with x_"),
        arguments(
            NAMES + "\nA,S,cube\nB,S,cube\nA,S,cube\n",
            "specimens.csv, row 4, column specimen: there is a specimen 'A' already in row 2; each"
                + " specimen needs its own name"),
        arguments(
            NAMES + "\nRa-1,S,cube\n\nRA-1,S,cube\n",
            "specimens.csv, row 4, column specimen: 'RA-1' differs from 'Ra-1' in row 2 in upper"
                + " and lower case only; each specimen needs its own name"),
        arguments(
            NAMES + "\n,S,cube\n",
            "specimens.csv, row 2, column specimen: the cell is empty; every specimen needs a"
                + " name"),
        arguments(
            NAMES + "\nA,,cube\n",
            "specimens.csv, row 2, column series: the cell is empty; every specimen needs a"
                + " series"),
        arguments(
            NAMES + "\n\"A\nB\",S,cube\n",
            "specimens.csv, row 2, column specimen: a name must be one line of at most 100"
                + " characters"),
        arguments(
            NAMES + "\nA,S,cylindre\n",
            "specimens.csv, row 2, column shape: 'cylindre' is no shape, did you mean"
                + " 'cylinder'?"),
        arguments(
            NAMES + "\nA,S,ball\n",
            "specimens.csv, row 2, column shape: 'ball' is no shape; possible: beam, core, cube,"
                + " cylinder, disc, prism"),
        arguments(
            NAMES + ",notes\nA,S,cube\n",
            "specimens.csv, row 2: there are 3 cells, but the first row names 4 columns; if the"
                + " last cells are empty, put a column last that is always filled, as some"
                + " spreadsheets leave out empty cells at a row's end"),
        arguments(
            "sep=,\n" + NAMES + "\nA,S\n",
            "specimens.csv, row 2: there are 2 cells, but the first row names 3 columns; if the"
                + " last cells are empty, put a column last that is always filled, as some"
                + " spreadsheets leave out empty cells at a row's end"),
        arguments(
            NAMES + ",age_days\nA,S,cube,7,5\n",
            "specimens.csv, row 2, column E (without a name): '5' stands in a column that the first"
                + " row does not name; was a separator typed within a cell?"),
        arguments(
            NAMES + ",,notes\nA,S,cube,x,y\n",
            "specimens.csv, row 2, column D (without a name): 'x' stands in a column that the first"
                + " row does not name; was a separator typed within a cell?"),
        arguments(
            NAMES + ",notes\nA,S,cube,\nB,S,cube,\"tank\nC,S,cube,\n",
            "specimens.csv, row 3: a quotation mark opens a cell and is not closed where the cell"
                + " ends; take it out, or write it twice and close the cell with one more"),
        arguments(
            NAMES + ",notes\nA,S,cube,\"tank\" left\n",
            "specimens.csv, row 2: a quotation mark opens a cell and is not closed where the cell"
                + " ends; take it out, or write it twice and close the cell with one more"),
        arguments(
            NAMES + ",diameter_1_mm,diameter_1_in\nA,S,cylinder,100,4\n",
            "specimens.csv, row 2, column diameter_1_in: this is 101.6 mm, but column diameter_1_mm"
                + " says 100 mm; keep the one that was measured"),
        arguments(
            NAMES + ",mass_lb,mass_kg\nA,S,cylinder,8.3,3.6\n",
            "specimens.csv, row 2, column mass_lb: this is 3.765 kg, but column mass_kg says 3.6"
                + " kg; keep the one that was measured"),
        arguments(
            NAMES.replace(',', ';') + ";mass_g\nA;S;cube;1.234\n",
            "specimens.csv, row 2, column mass_g: '1.234' can be 1234 or 1.234; write 1234, or"
                + " 1.2340 with one more digit"),
        arguments(
            NAMES.replace(',', '\t') + "\tmass_g\nA\tS\tcube\t1,234\n",
            "specimens.csv, row 2, column mass_g: '1,234' can be 1234 or 1.234; write 1234, or"
                + " 1,2340 with one more digit"),
        // a table that writes decimals both ways does not tell which a third one means
        arguments(
            NAMES + ",mass_g,age_days\nA,S,cube,1.234,7.5\nB,S,cube,3000,\"7,5\"\n",
            "specimens.csv, row 2, column mass_g: '1.234' can be 1234 or 1.234; write 1234, or"
                + " 1.2340 with one more digit"),
        arguments("a\0b", "specimens.csv: this is no text file; save the table as CSV (UTF-8)"),
        // first bytes of a ZIP file: PKWARE APPNOTE 4.3.7
        arguments(
            "PK\u0003\u0004rest",
            "specimens.csv: this is a spreadsheet's own format; save the table as CSV (UTF-8)"));
  }

  @ParameterizedTest
  @MethodSource("wrongTables")
  void read_wrongTable_saysWhereAndWhatWouldBeRight(String text, String message) {
    assertRefused(text.getBytes(UTF_8), message);
  }

  @Test
  void read_uncertainLetterInName_refuses() {
    byte[] bytes = (NAMES + "\nPrüf-1,S,cube\n").getBytes(Charset.forName("windows-1252"));
    assertRefused(
        bytes,
        "specimens.csv, row 2, column specimen: the file is not UTF-8, so the letters of 'Prüf-1'"
            + " are not certain; save the table as CSV (UTF-8)");
  }

  /** Bytes 81, 8D, 8F, 90 and 9D mean nothing in Windows-1252: CP1252.TXT, from memory. */
  @Test
  void read_bytesOfNoEncoding_refuses() {
    byte[] bytes = (NAMES + ",notes\nA,S,cube,?\n").getBytes(UTF_8);
    bytes[bytes.length - 2] = (byte) 0x81;
    assertRefused(
        bytes,
        "specimens.csv: this is neither UTF-8 nor Windows text; save the table as CSV (UTF-8)");
  }
}
