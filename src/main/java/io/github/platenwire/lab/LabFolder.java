package io.github.platenwire.lab;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The folder in which a lab keeps its rigs, specimens, calibrations and records. Each question
 * reads the file afresh, since people edit it meanwhile; only {@code lab.toml} is read once.
 * Reading never changes a file. Safe for any thread.
 */
public final class LabFolder {
  /** The file that makes a folder a lab folder. */
  static final String SETTINGS = "lab.toml";

  static final String SPECIMENS = "specimens.csv";
  static final String STUDY = "study.toml";
  static final String RIGS = "rigs";
  private static final String CALIBRATIONS = "calibrations";
  private static final String REGISTER_ENDING = ".jsonl";

  private final Path root;
  private final LabSettings settings;
  private final Library<DeviceDefinition> devices;
  private final Library<Method> methods;

  private LabFolder(Path root, LabSettings settings) {
    this.root = root;
    this.settings = settings;
    this.devices = devicesOf(root);
    this.methods =
        new Library<>(
            "method",
            root,
            "methods",
            "config/methods",
            Shipped.own(),
            Method::parse,
            Method::name);
  }

  private static Library<DeviceDefinition> devicesOf(Path root) {
    return new Library<>(
        "device",
        root,
        "devices",
        "devices",
        Shipped.own(),
        DeviceDefinition::parse,
        DeviceDefinition::name);
  }

  /**
   * A device definition without a lab: from the folder {@code devices} of a folder, else shipped.
   *
   * @throws LabException if there is none of the name, or it cannot be used
   */
  public static DeviceDefinition deviceOutsideLab(Path folder, String name) throws LabException {
    return devicesOf(folder.toAbsolutePath().normalize()).find(name);
  }

  /** The names that {@link #deviceOutsideLab} knows, sorted. */
  public static List<String> deviceNamesOutsideLab(Path folder) {
    return devicesOf(folder.toAbsolutePath().normalize()).names();
  }

  /**
   * A device definition shipped with the program, whatever else bears its name.
   *
   * @throws LabException if there is none
   */
  public static DeviceDefinition shippedDevice(String name) throws LabException {
    String path = "devices/" + name + ".toml";
    String text =
        Shipped.own()
            .text(path)
            .orElseThrow(() -> new LabException("no device '" + name + "' is shipped"));
    return read(() -> DeviceDefinition.parse(text, "shipped " + path));
  }

  /**
   * Opens a lab folder.
   *
   * @throws LabException if it is none, or its {@code lab.toml} cannot be used
   */
  public static LabFolder open(Path dir) throws LabException {
    Path root = dir.toAbsolutePath().normalize();
    if (!Files.isRegularFile(root.resolve(SETTINGS))) {
      throw new LabException(noLab(root));
    }
    String text = TextFile.utf8(root.resolve(SETTINGS), SETTINGS);
    return new LabFolder(root, read(() -> LabSettings.parse(text, SETTINGS)));
  }

  private static String noLab(Path root) {
    if (!Files.isDirectory(root)) {
      return root + ": there is no such folder; 'platenwire init " + root + "' makes a lab folder";
    }
    for (Path above = root.getParent(); above != null; above = above.getParent()) {
      if (Files.isRegularFile(above.resolve(SETTINGS))) {
        return root + ": this is no lab folder, but the folder above it is one; use --lab " + above;
      }
    }
    return root
        + ": this is no lab folder (it has no lab.toml); name one with --lab DIR, or make one:"
        + " platenwire init DIR";
  }

  /**
   * Makes a lab folder, or puts into an existing one what is missing there. Never changes or
   * overwrites a file.
   *
   * @param dir made if it is not there
   * @throws LabException if it holds files but is no lab folder
   * @throws IOException if a file or folder cannot be made
   */
  public static LabFolder create(Path dir, LabTemplate template) throws LabException, IOException {
    LabMaker.make(dir.toAbsolutePath().normalize(), template);
    return open(dir);
  }

  /** The folder itself, absolute. */
  public Path root() {
    return root;
  }

  /** What {@code lab.toml} says. */
  public LabSettings settings() {
    return settings;
  }

  /**
   * The names of the lab's rigs, sorted.
   *
   * @throws UncheckedIOException if the folder of rigs cannot be read
   */
  public List<String> rigNames() {
    return TomlFolder.names(root.resolve(RIGS));
  }

  /**
   * A rig by its name.
   *
   * @throws LabException if there is none of that name, or its file cannot be used
   */
  public Rig rig(String name) throws LabException {
    if (!rigNames().contains(name)) {
      String none = rigNames().isEmpty() ? "; describe the frame in rigs/" + name + ".toml" : "";
      throw new LabException(
          "there is no rig '" + name + "' in rigs/" + none + Names.suggestion(name, rigNames()));
    }
    String source = RIGS + "/" + name + ".toml";
    String text = TextFile.utf8(root.resolve(RIGS).resolve(name + ".toml"), source);
    return read(() -> Rig.parse(text, source, name));
  }

  /**
   * Every specimen in the table, in its order.
   *
   * @throws LabException at the first cell that cannot be used
   */
  public List<Specimen> specimens() throws LabException {
    byte[] table = TextFile.bytes(root.resolve(SPECIMENS), SPECIMENS);
    return SpecimenTable.read(table, SPECIMENS, settings.zone());
  }

  /**
   * A specimen by its name.
   *
   * @throws LabException if the table has none of that name, or cannot be used
   */
  public Specimen specimen(String name) throws LabException {
    List<Specimen> specimens = specimens();
    for (Specimen specimen : specimens) {
      if (specimen.name().equals(name)) {
        return specimen;
      }
    }
    String none = specimens.isEmpty() ? "; the table lists no specimen yet" : "";
    List<String> names = specimens.stream().map(Specimen::name).toList();
    throw new LabException(
        SPECIMENS + ": there is no specimen '" + name + "'" + none + Names.suggestion(name, names));
  }

  /**
   * What is being compared.
   *
   * @throws LabException if {@code study.toml} is missing or cannot be used
   */
  public Study study() throws LabException {
    String text = TextFile.utf8(root.resolve(STUDY), STUDY);
    return read(() -> Study.parse(text, STUDY));
  }

  /** The names of all device definitions: the lab's own and those shipped, sorted. */
  public List<String> deviceNames() {
    return devices.names();
  }

  /**
   * A device definition by its name: the lab's own, else the one shipped with Platenwire.
   *
   * @throws LabException if there is neither, or it cannot be used
   */
  public DeviceDefinition device(String name) throws LabException {
    return devices.find(name);
  }

  /** The names of all methods: the lab's own and those shipped, sorted. */
  public List<String> methodNames() {
    return methods.names();
  }

  /**
   * A method by its name: the lab's own, else the one shipped with Platenwire.
   *
   * @throws LabException if there is neither, or it cannot be used
   */
  public Method method(String name) throws LabException {
    return methods.find(name);
  }

  /**
   * The calibration that a channel names.
   *
   * @return empty if it names none
   * @throws LabException if its file is missing or cannot be used
   */
  public Optional<Calibration> calibration(Channel channel) throws LabException {
    if (channel.calibration().isEmpty()) {
      return Optional.empty();
    }
    String name = channel.calibration().get();
    List<String> names = calibrationNames();
    if (!names.contains(name)) {
      throw new LabException(
          "channel '"
              + channel.name()
              + "' names the calibration '"
              + name
              + "', but there is no "
              + CALIBRATIONS
              + "/"
              + name
              + ".toml"
              + Names.suggestion(name, names));
    }
    return Optional.of(calibration(name));
  }

  /**
   * The names of the lab's calibrations, sorted.
   *
   * @throws UncheckedIOException if the folder of calibrations cannot be read
   */
  public List<String> calibrationNames() {
    return TomlFolder.names(root.resolve(CALIBRATIONS));
  }

  /**
   * A calibration by its name.
   *
   * @throws LabException if there is none of that name, or its file cannot be used
   */
  public Calibration calibration(String name) throws LabException {
    List<String> names = calibrationNames();
    if (!names.contains(name)) {
      throw new LabException(
          "there is no calibration '"
              + name
              + "' in "
              + CALIBRATIONS
              + "/"
              + Names.suggestion(name, names));
    }
    return calibrationFile(
        root.resolve(CALIBRATIONS).resolve(name + ".toml"), CALIBRATIONS + "/" + name + ".toml");
  }

  /**
   * A calibration file that need not lie in a lab folder.
   *
   * @param file named {@code NAME.toml}
   * @param source its name for error messages
   * @throws LabException if it is missing or cannot be used
   */
  public static Calibration calibrationFile(Path file, String source) throws LabException {
    String name = file.getFileName().toString().replaceFirst("\\.toml$", "");
    String text = TextFile.utf8(file, source);
    return read(() -> Calibration.parse(text, source, name));
  }

  /**
   * A path for the raw file of a test that starts now, such as {@code
   * records/2026-11/20261125T071502Z_RA-07-2.raw.csv}; its folder is made, the file is not. Two
   * that ask at the same moment may be given the same path: whoever creates the file with "must not
   * exist" wins, the other asks again.
   *
   * @param start when the test starts
   * @param specimenName as the table has it
   * @throws IOException if the folder cannot be made or read
   */
  public Path newRecord(Instant start, String specimenName) throws IOException {
    return RecordNames.free(root.resolve("records"), start, specimenName);
  }

  /**
   * Every raw file, oldest first.
   *
   * @throws IOException if a folder of records cannot be read
   */
  public List<Path> records() throws IOException {
    return RecordNames.all(root.resolve("records"));
  }

  /**
   * The summary's path beside a raw file.
   *
   * @throws IllegalArgumentException if it is no raw file's name
   */
  public static Path summaryOf(Path rawFile) {
    return RecordNames.summaryOf(rawFile);
  }

  /**
   * The newest version of a raw file's summary: {@code ….summary.json}, or {@code ….summary-2.json}
   * and so on where something was corrected afterwards.
   *
   * @return empty if there is none
   */
  public static Optional<Path> newestSummaryOf(Path rawFile) {
    return RecordNames.newestSummaryOf(rawFile);
  }

  /** All versions of a raw file's summary that there are, the oldest first. */
  public static List<Path> summariesOf(Path rawFile) {
    return RecordNames.summariesOf(rawFile);
  }

  /** The path that the next version of a raw file's summary will have; nothing bears it yet. */
  public static Path nextSummaryOf(Path rawFile) {
    return RecordNames.nextSummaryOf(rawFile);
  }

  /** Where the rigs' registers lie. */
  public Path registerFolder() {
    return root.resolve("register");
  }

  /** Where the public parts of the rigs' keys lie. */
  public Path keysFolder() {
    return root.resolve("keys");
  }

  /**
   * The names of the rigs that have a register, sorted.
   *
   * @throws IOException if the folder cannot be read
   */
  public List<String> registerNames() throws IOException {
    if (!Files.isDirectory(registerFolder())) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(registerFolder())) {
      return files
          .map(file -> String.valueOf(file.getFileName()))
          .filter(name -> name.endsWith(REGISTER_ENDING) && !name.startsWith("."))
          .map(name -> name.substring(0, name.length() - REGISTER_ENDING.length()))
          .sorted()
          .toList();
    }
  }

  /** Where the program's own log goes; may not be there yet. */
  public Path logFolder() {
    return root.resolve("logs");
  }

  private interface TomlReading<T> {
    T read() throws TomlException;
  }

  private static <T> T read(TomlReading<T> reading) throws LabException {
    try {
      return reading.read();
    } catch (TomlException e) {
      throw LabException.of(e);
    }
  }
}
