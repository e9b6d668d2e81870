package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabFolderTest {
  private static final ZoneId ZONE = ZoneId.of("America/St_Johns");

  @TempDir private Path dir;
  private Path root;

  @BeforeEach
  void choosePlace() {
    root = dir.resolve("my lab");
  }

  private static LabTemplate example() {
    return LabTemplate.example("Weir \"north\" lab \\ $1", ZONE, UnitSystem.INCH_POUND);
  }

  private static Map<String, String> texts(Path folder) throws IOException {
    Map<String, String> texts = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        texts.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
      }
    }
    return texts;
  }

  @Test
  void create_example_opensWithAllItsParts() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    assertThat(lab.root()).isEqualTo(root.toAbsolutePath());
    assertThat(lab.settings())
        .isEqualTo(new LabSettings("Weir \"north\" lab \\ $1", UnitSystem.INCH_POUND, ZONE));
    assertThat(lab.rigNames()).containsExactly("frame-1");
    assertThat(lab.rig("frame-1").channels()).extracting(Channel::name).containsExactly("load");
    assertThat(lab.study().series())
        .extracting(Study.Series::name)
        .containsExactly("NA-T", "NA-S", "RA-T", "RA-S");
    assertThat(lab.specimens()).extracting(Specimen::name).containsExactly("NA-07-1", "RA-07-1");
    for (Specimen specimen : lab.specimens()) {
      assertThat(lab.study().find(specimen.series())).isPresent();
    }
    assertThat(lab.records()).isEmpty();
    assertThat(lab.logFolder()).isEqualTo(lab.root().resolve("logs"));
    assertThat(texts(root).keySet())
        .containsExactly(
            "calibrations/README.txt",
            "devices/README.txt",
            "lab.toml",
            "records/README.txt",
            "register/README.txt",
            "rigs/frame-1.toml",
            "specimens.csv",
            "study.toml");
  }

  @Test
  void create_exampleOfACalibration_isReadAsShown() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    String readme = Files.readString(root.resolve("calibrations/README.txt"));
    String shown =
        readme
            .lines()
            .filter(line -> line.startsWith("    "))
            .map(String::strip)
            .reduce("", (a, b) -> a + b + "\n");
    Files.writeString(root.resolve("calibrations/frame-1-load.toml"), shown);
    Path rigFile = root.resolve("rigs/frame-1.toml");
    Files.writeString(
        rigFile, Files.readString(rigFile).replace("# calibration =", "calibration ="));
    Channel channel = lab.rig("frame-1").channels().get(0);
    assertThat(lab.calibration(channel).orElseThrow().certificate()).isEqualTo("C-0001");
  }

  @Test
  void create_ownTexts_writesThemInPlaceOfTheExamples() throws Exception {
    LabTemplate template =
        example()
            .withRigs(Map.of("a", "rig a", "b", "rig b"))
            .withSpecimens("specimen,series,shape\n")
            .withStudy("study")
            .withFile("calibrations/c.toml", "calibration");
    LabFolder lab = LabFolder.create(root, template);
    assertThat(lab.rigNames()).containsExactly("a", "b");
    assertThat(texts(root))
        .containsEntry("rigs/b.toml", "rig b")
        .containsEntry("specimens.csv", "specimen,series,shape\n")
        .containsEntry("study.toml", "study")
        .containsEntry("calibrations/c.toml", "calibration")
        .doesNotContainKey("rigs/frame-1.toml");
  }

  @Test
  void create_labAlreadyThere_addsOnlyWhatIsMissing() throws Exception {
    LabFolder.create(root, example());
    Files.move(root.resolve("rigs/frame-1.toml"), root.resolve("rigs/mine.toml"));
    Files.delete(root.resolve("study.toml"));
    Files.writeString(root.resolve("specimens.csv"), "specimen,series,shape\nmine,S,cube\n");
    Map<String, String> before = texts(root);
    LabFolder.create(root, LabTemplate.example("Other", ZoneId.of("UTC"), UnitSystem.SI));
    Map<String, String> after = texts(root);
    assertThat(after).containsAllEntriesOf(before);
    after.keySet().removeAll(before.keySet());
    assertThat(after.keySet()).containsExactly("study.toml");
  }

  @Test
  void create_folderWithOtherFiles_refusesAndLeavesIt() throws Exception {
    Files.createDirectories(root);
    Files.writeString(root.resolve("holiday.txt"), "x");
    assertThatThrownBy(() -> LabFolder.create(root, example()))
        .isInstanceOf(LabException.class)
        .hasMessage(
            root
                + ": there are files here, but no lab.toml; choose a new or an empty folder for the"
                + " lab, such as "
                + root.resolve("lab"));
    assertThat(texts(root).keySet()).containsExactly("holiday.txt");
  }

  @Test
  void create_placeIsAFile_refuses() throws Exception {
    Files.writeString(root, "x");
    assertThatThrownBy(() -> LabFolder.create(root, example()))
        .isInstanceOf(LabException.class)
        .hasMessage(root + ": this is a file; a lab needs a folder of its own");
  }

  @Test
  void create_folderWithHiddenFilesOnly_isTakenAsEmpty() throws Exception {
    Files.createDirectories(root.resolve(".git"));
    Files.writeString(root.resolve("Thumbs.db"), "x");
    assertThat(LabFolder.create(root, example()).rigNames()).containsExactly("frame-1");
  }

  @ParameterizedTest
  @ValueSource(strings = {"../x", "/x", "a//b", "", "a/../b", ".hidden", "a\\b"})
  void withFile_pathOutOfTheFolder_refuses(String path) {
    LabTemplate template = example();
    assertThatThrownBy(() -> template.withFile(path, ""))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void open_noFolder_saysHowToMakeOne() {
    assertThatThrownBy(() -> LabFolder.open(root))
        .isInstanceOf(LabException.class)
        .hasMessage(
            root + ": there is no such folder; 'platenwire init " + root + "' makes a lab folder");
  }

  @Test
  void open_noLabFolder_saysWhatToDo() throws IOException {
    Files.createDirectories(root);
    assertThatThrownBy(() -> LabFolder.open(root))
        .hasMessage(
            root
                + ": this is no lab folder (it has no lab.toml); name one with --lab DIR, or make"
                + " one: platenwire init DIR");
  }

  @Test
  void open_folderWithinALab_namesTheLab() throws Exception {
    LabFolder.create(root, example());
    assertThatThrownBy(() -> LabFolder.open(root.resolve("rigs")))
        .hasMessage(
            root.resolve("rigs")
                + ": this is no lab folder, but the folder above it is one; use --lab "
                + root);
  }

  @Test
  void open_wrongSettings_saysLineAndColumn() throws Exception {
    LabFolder.create(root, example());
    Files.writeString(root.resolve("lab.toml"), "format = \"platenwire-lab 1\"\nname = 3\n");
    assertThatThrownBy(() -> LabFolder.open(root))
        .isInstanceOf(LabException.class)
        .hasMessageMatching("lab\\.toml:\\d+:\\d+: .*");
  }

  @Test
  void reading_everything_changesNoFile() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    Files.writeString(
        root.resolve("specimens.csv"), "\uFEFFsep=;\r\nspecimen;series;shape\r\nA;S;cube\r\n");
    Map<String, String> before = texts(root);
    lab.rig("frame-1");
    lab.specimens();
    lab.specimen("A");
    lab.study();
    lab.records();
    lab.deviceNames();
    lab.methodNames();
    assertThat(texts(root)).isEqualTo(before);
  }

  @Test
  void rig_unknown_suggests() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    assertThatThrownBy(() -> lab.rig("fram-1"))
        .isInstanceOf(LabException.class)
        .hasMessage("there is no rig 'fram-1' in rigs/; did you mean 'frame-1'?");
    assertThatThrownBy(() -> lab.rig("../lab")).hasMessageStartingWith("there is no rig '../lab'");
    Files.delete(root.resolve("rigs/frame-1.toml"));
    assertThatThrownBy(() -> lab.rig("x"))
        .hasMessage("there is no rig 'x' in rigs/; describe the frame in rigs/x.toml");
    Files.delete(root.resolve("rigs"));
    assertThat(lab.rigNames()).isEmpty();
  }

  @Test
  void specimen_unknown_suggests() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    assertThat(lab.specimen("RA-07-1").series()).isEqualTo("RA-T");
    assertThatThrownBy(() -> lab.specimen("RA-07-2"))
        .isInstanceOf(LabException.class)
        .hasMessage("specimens.csv: there is no specimen 'RA-07-2'; did you mean 'RA-07-1'?");
    assertThatThrownBy(() -> lab.specimen("Z"))
        .hasMessage("specimens.csv: there is no specimen 'Z'; there are: NA-07-1, RA-07-1");
    Files.writeString(root.resolve("specimens.csv"), "specimen,series,shape\n");
    assertThatThrownBy(() -> lab.specimen("Z"))
        .hasMessage("specimens.csv: there is no specimen 'Z'; the table lists no specimen yet");
    Files.delete(root.resolve("specimens.csv"));
    assertThatThrownBy(lab::specimens)
        .isInstanceOf(LabException.class)
        .hasMessage(
            "specimens.csv: there is no such file in the lab folder "
                + root
                + "; 'platenwire init' on that folder puts back what is missing");
  }

  @Test
  void calibration_missing_saysWhichChannelWantsIt() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    Channel plain = lab.rig("frame-1").channels().get(0);
    assertThat(lab.calibration(plain)).isEqualTo(Optional.empty());
    Path rigFile = root.resolve("rigs/frame-1.toml");
    Files.writeString(
        rigFile, Files.readString(rigFile).replace("# calibration =", "calibration ="));
    Channel channel = lab.rig("frame-1").channels().get(0);
    assertThatThrownBy(() -> lab.calibration(channel))
        .isInstanceOf(LabException.class)
        .hasMessage(
            "channel 'load' names the calibration 'frame-1-load', but there is no"
                + " calibrations/frame-1-load.toml");
  }

  @Test
  void deviceAndMethod_unknown_sayWhereItWasLookedFor() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    assertThatThrownBy(() -> lab.device("no such device at all"))
        .isInstanceOf(LabException.class)
        .hasMessageStartingWith(
            "there is no device 'no such device at all', neither as devices/no such device at"
                + " all.toml in the lab folder nor shipped with Platenwire");
    assertThatThrownBy(() -> lab.method("no such method at all"))
        .isInstanceOf(LabException.class)
        .hasMessageStartingWith(
            "there is no method 'no such method at all', neither as methods/no such method at"
                + " all.toml in the lab folder nor shipped with Platenwire");
  }

  @Test
  void device_labsOwnWithAnError_saysLineAndColumn() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    Files.writeString(root.resolve("devices/mine.toml"), "kind = [\n");
    assertThat(lab.deviceNames()).contains("mine");
    assertThatThrownBy(() -> lab.device("mine"))
        .isInstanceOf(LabException.class)
        .hasMessageMatching("(?s)devices/mine\\.toml:\\d+:\\d+: .*");
  }

  @ParameterizedTest
  @ValueSource(strings = {"frame-1", "frame-tcp", "frame-gauges", "frame-modulus", "log-typed"})
  void shippedRig_eachExample_isReadWithoutError(String name) throws TomlException {
    String text = Shipped.own().text("config/rigs/" + name + ".toml").orElseThrow();
    assertThat(Rig.parse(text, name + ".toml", name).channels()).isNotEmpty();
    assertThat(Shipped.own().names("config/rigs"))
        .containsExactly("frame-1", "frame-gauges", "frame-modulus", "frame-tcp", "log-typed");
  }

  @Test
  void newRecord_start_namesFileByUtcAndSpecimen() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    Path file = lab.newRecord(Instant.parse("2026-11-25T07:15:02.9Z"), "RA-07-2");
    assertThat(lab.root().relativize(file).toString().replace('\\', '/'))
        .isEqualTo("records/2026-11/20261125T071502Z_RA-07-2.raw.csv");
    assertThat(file.getParent()).isEmptyDirectory();
  }

  @Test
  void newRecord_nameTaken_countsOn() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    Instant start = Instant.parse("2026-11-25T07:15:02Z");
    Path first = lab.newRecord(start, "RA/1");
    Files.createFile(first);
    Path second = lab.newRecord(start, "ra:1");
    assertThat(second.getFileName()).hasToString("20261125T071502Z_ra_1-2.raw.csv");
    Files.createFile(LabFolder.summaryOf(second));
    assertThat(lab.newRecord(start, "RA/1").getFileName())
        .hasToString("20261125T071502Z_RA_1-3.raw.csv");
  }

  @Test
  void records_severalMonths_oldestFirst() throws Exception {
    LabFolder lab = LabFolder.create(root, example());
    List<Path> made =
        List.of(
            lab.root().resolve("records/20251231T235959Z_B.raw.csv"),
            lab.newRecord(Instant.parse("2026-09-30T23:59:59Z"), "C"),
            lab.newRecord(Instant.parse("2026-11-25T07:15:02Z"), "A"));
    for (Path file : made) {
      Files.createFile(file);
    }
    Path again = lab.newRecord(Instant.parse("2026-11-25T07:15:02Z"), "A");
    Files.createFile(again);
    Files.createFile(LabFolder.summaryOf(again));
    Files.createFile(lab.root().resolve("records/2026-11/notes.csv"));
    Files.createDirectory(lab.root().resolve("records/2026-11/folder.raw.csv"));
    assertThat(lab.records()).containsExactly(made.get(0), made.get(1), made.get(2), again);
  }

  @Test
  void summaryOf_rawFile_liesBesideIt() {
    assertThat(LabFolder.summaryOf(Path.of("a", "x.raw.csv")))
        .isEqualTo(Path.of("a", "x.summary.json"));
    assertThatThrownBy(() -> LabFolder.summaryOf(Path.of("x.csv")))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
