package io.github.platenwire.lab;

import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Dimensions;
import io.github.platenwire.method.Specimen;
import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class SpecimenTableTest {
  private static final ZoneId UTC = ZoneId.of("UTC");
  private static final String HEADER =
      "specimen,series,shape,diameter_1_mm,diameter_2_mm,length_mm,mass_g,ends,curing,moisture,"
          + "notes,cast,age_days\n";
  private static final String ROW =
      "RA-07-2,RA-T,cylinder,100.1,99.9,200.3,3725,ground,tank,moist,,2026-11-18 14:30,7\n";
  private static final String SEMICOLONS = (HEADER + ROW).replace(',', ';').replace('.', ',');

  private static List<Specimen> read(byte[] bytes) throws LabException {
    return SpecimenTable.read(bytes, "specimens.csv", UTC);
  }

  private static List<Specimen> read(String text) throws LabException {
    return read(text.getBytes(UTF_8));
  }

  private static byte[] after(byte[] first, byte[] second) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(first);
    out.writeBytes(second);
    return out.toByteArray();
  }

  @Test
  void read_plainTable_givesEveryCell() throws LabException {
    assertThat(read(HEADER + ROW)).hasSize(1);
    Specimen specimen = read(HEADER + ROW).get(0);
    assertThat(specimen.name()).isEqualTo("RA-07-2");
    assertThat(specimen.series()).isEqualTo("RA-T");
    assertThat(specimen.shape()).isEqualTo("cylinder");
    assertThat(specimen.diametersMillimetres()).containsExactly(100.1, 99.9);
    assertThat(specimen.lengthMillimetres()).hasValue(200.3);
    assertThat(specimen.massKilograms()).hasValue(3.725);
    assertThat(specimen.ends()).hasValue("ground");
    assertThat(specimen.curing()).hasValue("tank");
    assertThat(specimen.moisture()).hasValue("moist");
    assertThat(specimen.cast()).hasValue(LocalDateTime.of(2026, 11, 18, 14, 30));
    assertThat(specimen.plannedAgeDays()).hasValue(7);
    assertThat(specimen.asWritten().keySet()).containsExactly(HEADER.strip().split(",", -1));
    assertThat(specimen.asWritten()).containsEntry("mass_g", "3725").containsEntry("notes", "");
  }

  /** Byte order mark EF BB BF: RFC 3629 section 6. CRLF and quotes: RFC 4180 section 2. */
  static Stream<Arguments> savedByASpreadsheet() {
    byte[] mark = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
    String plain = HEADER + ROW;
    return Stream.of(
        arguments("byte order mark", after(mark, plain.getBytes(UTF_8))),
        arguments("UTF-16", plain.replace(',', '\t').getBytes(UTF_16)),
        arguments("CRLF", plain.replace("\n", "\r\n").getBytes(UTF_8)),
        arguments("CR alone", plain.replace("\n", "\r").getBytes(UTF_8)),
        arguments("no line break at the end", plain.strip().getBytes(UTF_8)),
        arguments("semicolons and decimal comma", SEMICOLONS.getBytes(UTF_8)),
        arguments("semicolons, decimal point", plain.replace(',', ';').getBytes(UTF_8)),
        arguments("tabs", plain.replace(',', '\t').getBytes(UTF_8)),
        arguments("tabs, decimal comma", SEMICOLONS.replace(';', '\t').getBytes(UTF_8)),
        arguments("separator line", ("sep=;\r\n" + SEMICOLONS).getBytes(UTF_8)),
        arguments("quoted separator line", ("\"sep=,\"\n" + plain).getBytes(UTF_8)),
        arguments("mark and separator line", after(mark, ("SEP=,\n" + plain).getBytes(UTF_8))),
        arguments("quotes", plain.replaceAll("([^,\n]+)", "\"$1\"").getBytes(UTF_8)),
        arguments("spaces", plain.replace(",", " ,  ").getBytes(UTF_8)),
        arguments("spaces about quotes", plain.replaceAll("([^,\n]+)", " \"$1\" ").getBytes(UTF_8)),
        arguments("no-break spaces", plain.replace(",", "\u00A0,\u202F").getBytes(UTF_8)),
        arguments(
            "empty rows", ("\n" + HEADER + "\n,,,\n" + ROW + ",,,,,,,,,,,,\n\n").getBytes(UTF_8)),
        arguments("empty columns", plain.replace("\n", ",,,\n").getBytes(UTF_8)),
        arguments("empty cells beyond the header", (HEADER + ROW.strip() + ",,\n").getBytes(UTF_8)),
        arguments("capitals", (HEADER.toUpperCase(java.util.Locale.ROOT) + ROW).getBytes(UTF_8)),
        arguments(
            "friendly names",
            ("Specimen,Series,Shape,Diameter 1 (mm),Diameter 2 [mm],Length / mm,Mass (g),Ends,"
                    + "Curing,Moisture,Notes,Cast,Age (days)\n"
                    + ROW)
                .getBytes(UTF_8)),
        arguments(
            "kilograms",
            plain.replace("mass_g", "mass_kg").replace("3725", "3.725").getBytes(UTF_8)),
        arguments("Shape with a capital", plain.replace("cylinder", "Cylinder").getBytes(UTF_8)),
        arguments("T in the time", plain.replace("18 14", "18T14").getBytes(UTF_8)),
        arguments("seconds", plain.replace("14:30", "14:30:00").getBytes(UTF_8)),
        arguments(
            "day first with points", plain.replace("2026-11-18", "18.11.2026").getBytes(UTF_8)),
        arguments(
            "day that is no month", plain.replace("2026-11-18", "18/11/2026").getBytes(UTF_8)),
        arguments(
            "month first, day no month", plain.replace("2026-11-18", "11/18/2026").getBytes(UTF_8)),
        arguments(
            "year first with slashes", plain.replace("2026-11-18", "2026/11/18").getBytes(UTF_8)),
        arguments("offset", plain.replace("14:30", "15:30+01:00").getBytes(UTF_8)),
        arguments("Z", plain.replace("14:30", "14:30Z").getBytes(UTF_8)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("savedByASpreadsheet")
  void read_savedByASpreadsheet_givesTheSameSpecimen(String how, byte[] bytes) throws LabException {
    Specimen plain = read(HEADER + ROW).get(0);
    assertThat(read(bytes))
        .usingRecursiveComparison()
        .ignoringFields("asWritten")
        .isEqualTo(List.of(plain));
  }

  /** Byte FC is ü and byte B5 is µ in Windows-1252: Unicode's table CP1252.TXT, from memory. */
  @Test
  void read_windowsText_keepsLettersInNotes() throws LabException {
    String text = HEADER + ROW.replace("moist,,", "moist,geprüft,");
    Specimen specimen = read(text.getBytes(Charset.forName("windows-1252"))).get(0);
    assertThat(specimen.asWritten()).containsEntry("notes", "gepr\u00FCft");
  }

  @Test
  void read_cellWithSeparatorsQuotesAndLineBreak_keepsIt() throws LabException {
    // the three rows of RFC 4180 section 2, rules 6 and 7: CRLF, comma and a doubled quote
    String notes = "\"b\r\nbb, \"\"ccc\"\"\"";
    List<Specimen> specimens =
        read(HEADER + ROW.replace("moist,,", "moist," + notes + ",") + ROW.replace("2,R", "3,R"));
    assertThat(specimens.get(0).asWritten()).containsEntry("notes", "b\r\nbb, \"ccc\"");
    assertThat(specimens.get(1).name()).isEqualTo("RA-07-3");
  }

  /** Inch 25.4 mm and pound 0.45359237 kg exactly: international agreement of 1959. */
  @Test
  void read_inchAndPound_convertsExactly() throws LabException {
    Specimen specimen =
        read("""
                specimen,series,shape,diameter_1_in,diameter_2_in,length_in,mass_lb
                A,S,cylinder,4.00,4.01,8,8.3
                """)
            .get(0);
    assertThat(specimen.diametersMillimetres().get(0)).isCloseTo(101.6, within(1e-12));
    assertThat(specimen.diametersMillimetres().get(1)).isCloseTo(101.854, within(1e-12));
    assertThat(specimen.lengthMillimetres().getAsDouble()).isCloseTo(203.2, within(1e-12));
    assertThat(specimen.massKilograms().getAsDouble()).isCloseTo(3.764816671, within(1e-12));
  }

  @Test
  void read_bothUnitsAgreeing_takesMillimetres() throws LabException {
    Specimen specimen =
        read("""
                specimen,series,shape,diameter_1_in,diameter_1_mm,length_in,mass_g,mass_kg
                A,S,cylinder,4.00,101.5,8,3764,3.764
                B,S,cylinder,4.00,,8,,
                """)
            .get(0);
    assertThat(specimen.diametersMillimetres()).containsExactly(101.5);
    assertThat(specimen.massKilograms()).hasValue(3.764);
  }

  @Test
  void read_onlyWhatIsNeeded_leavesTheRestEmpty() throws LabException {
    Specimen specimen = read("specimen,series,shape\nA,S,cube\n").get(0);
    assertThat(specimen.diametersMillimetres()).isEmpty();
    assertThat(specimen.lengthMillimetres()).isEqualTo(OptionalDouble.empty());
    assertThat(specimen.massKilograms()).isEqualTo(OptionalDouble.empty());
    assertThat(specimen.cast()).isEqualTo(Optional.empty());
    assertThat(specimen.plannedAgeDays()).isEqualTo(OptionalDouble.empty());
    assertThat(specimen.ends()).isEqualTo(Optional.empty());
  }

  @Test
  void read_columnsOfPeoplesOwn_keepsThemAsWritten() throws LabException {
    Specimen specimen =
        read("specimen,series,shape,Operator,x_cost,slump (mm)\nA,S,cube,B. C.,\"1,234\",80\n")
            .get(0);
    assertThat(specimen.asWritten())
        .containsExactly(
            java.util.Map.entry("specimen", "A"),
            java.util.Map.entry("series", "S"),
            java.util.Map.entry("shape", "cube"),
            java.util.Map.entry("Operator", "B. C."),
            java.util.Map.entry("x_cost", "1,234"),
            java.util.Map.entry("slump (mm)", "80"));
  }

  @Test
  void read_columnsNamedBySignsAlone_keepsThemApart() throws LabException {
    Specimen specimen = read("specimen,series,shape,#,%\nA,S,cube,1,2\n").get(0);
    assertThat(specimen.asWritten()).containsEntry("#", "1").containsEntry("%", "2");
  }

  @Test
  void read_headerOnly_givesNoSpecimen() throws LabException {
    assertThat(read(HEADER)).isEmpty();
  }

  @Test
  void read_beam_mayBeLongerThanACylinder() throws LabException {
    assertThat(read("specimen,series,shape,length_mm\nA,S,beam,1400\n").get(0).lengthMillimetres())
        .hasValue(1400);
  }

  @Test
  void read_splitBeam_keepsEverySizeInMillimetresAndDegrees() throws LabException {
    Specimen specimen =
        read("specimen,series,shape,Width (mm),depth_in,span_in,gauge_length_mm,notch_depth_mm,"
                + "bar_diameter_in,cover_mm,wedge_angle_deg\n"
                + "A,S,beam,150,6,18,152.4,25,0.625,40,20\n")
            .get(0);
    assertThat(specimen.dimensions())
        .isEqualTo(
            Dimensions.of(
                Map.of(
                    Dimension.WIDTH, 150.0,
                    Dimension.DEPTH, 6 * 25.4,
                    Dimension.SPAN, 18 * 25.4,
                    Dimension.GAUGE_LENGTH, 152.4,
                    Dimension.NOTCH_DEPTH, 25.0,
                    Dimension.BAR_DIAMETER, 0.625 * 25.4,
                    Dimension.COVER, 40.0,
                    Dimension.WEDGE_ANGLE, 20.0)));
  }

  /** 4641.2 psi are 32.0 MPa (from the exact factors). */
  @Test
  void read_strengthOfCompanions_isTakenInEitherUnit() throws LabException {
    for (String column :
        List.of("companion_strength_MPa,32", "Companion strength (psi),4641.2075")) {
      String[] cell = column.split(",", 2);
      Specimen specimen =
          read("specimen,series,shape," + cell[0] + "\nA,S,cylinder," + cell[1] + "\n").get(0);
      assertThat(specimen.dimension(Dimension.COMPANION_STRENGTH).orElseThrow())
          .isCloseTo(32, within(1e-4));
    }
    assertThatThrownBy(
            () -> read("specimen,series,shape,companion_strength_mpa\nA,S,cylinder,4641\n"))
        .hasMessageContaining("4641 MPa is no likely companion strength")
        .hasMessageContaining("4641 psi would be likely");
    assertThatThrownBy(() -> read("specimen,series,shape,companion_strength\nA,S,cylinder,32\n"))
        .hasMessageContaining("did you mean 'companion_strength_");
  }

  @Test
  void read_cylinder_hasNoOtherSizes() throws LabException {
    assertThat(read("specimen,series,shape,diameter_1_mm\nA,S,cylinder,100\n").get(0).dimensions())
        .isEqualTo(Dimensions.NONE);
  }

  @Test
  void read_widthInTheWrongUnit_saysWhichWouldBeLikely() {
    assertThatThrownBy(() -> read("specimen,series,shape,width_mm\nA,S,beam,6\n"))
        .hasMessageContaining("6 mm is no likely width")
        .hasMessageContaining("6 in would be likely");
  }

  @Test
  void read_widthWithoutUnit_saysHowToNameIt() {
    assertThatThrownBy(() -> read("specimen,series,shape,width\nA,S,beam,150\n"))
        .hasMessageContaining("width_mm");
  }

  /** What a table shows about its decimals settles what could be read two ways. */
  static Stream<Arguments> threeDecimals() {
    return Stream.of(
        arguments("comma table, point", ",", "101.250", "7", 101.25),
        arguments("semicolon table, comma", ";", "101,250", "7", 101.25),
        arguments("semicolon table, other cell has a point", ";", "101.250", "7.5", 101.25),
        arguments("tab table, other cell has a comma", "\t", "101,250", "7,5", 101.25),
        arguments("tab table, other cell has a point", "\t", "101.250", "7.5", 101.25),
        arguments("four decimals are no thousands", "\t", "101,2500", "7", 101.25),
        arguments("quoted comma, two decimals", ",", "\"101,25\"", "7", 101.25),
        arguments("exponent", ",", "1.0125e2", "7", 101.25),
        arguments("plus sign", ",", "+101.25", "7", 101.25),
        arguments("point at the end", ",", "101.", "7", 101));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("threeDecimals")
  void read_decimalsTold_readsThem(
      String how, String separator, String diameter, String age, double expected)
      throws LabException {
    String text =
        String.join(separator, "specimen", "series", "shape", "diameter_1_mm", "age_days")
            + "\n"
            + String.join(separator, "A", "S", "core", diameter, age);
    assertThat(read(text).get(0).diametersMillimetres()).containsExactly(expected);
  }
}
