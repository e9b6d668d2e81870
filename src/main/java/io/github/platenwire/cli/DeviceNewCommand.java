package io.github.platenwire.cli;

import io.github.platenwire.commission.DefinitionDraft;
import io.github.platenwire.commission.Draft;
import io.github.platenwire.commission.Hints;
import io.github.platenwire.commission.Question;
import io.github.platenwire.commission.Sample;
import io.github.platenwire.commission.SampleDecoder;
import io.github.platenwire.commission.SampleReport;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code device new}: writes a first definition. */
@Command(
    name = "new",
    description = {
      "Write a first device definition that decodes a log, or lines that you type.",
      "What the bytes do not tell is asked; options answer beforehand. No file is overwritten.",
      "Ends with 1 if something in the log is not decoded by what was written."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire device new --name bench-load",
      "  platenwire device new --name bench-load --sample bench.bytes --baud 19200",
      "  platenwire device new --name two --sample two.bytes --unit kN --unit mm",
      "  platenwire device new --name old --sample old.bytes --spelling KGS=kgf --state T=unstable"
    })
final class DeviceNewCommand implements Callable<Integer> {
  @Option(
      names = "--sample",
      paramLabel = "LOG",
      description = "A byte log, or a plain file of the bytes as captured.")
  private @Nullable Path sample;

  @Option(
      names = "--name",
      paramLabel = "NAME",
      required = true,
      description = "The definition's name: lower-case letters, digits and hyphens.")
  private String name = "";

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description =
          "The new file (default: NAME.toml among the lab's devices, or here if there is no lab).")
  private @Nullable Path out;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      description =
          "Unit of a number that carries none; again for the next such number. '-': no reading.")
  private List<String> units = new ArrayList<>();

  @Option(
      names = "--spelling",
      paramLabel = "SENT=UNIT",
      description = "What the device writes for a unit, such as KGS=kgf; may be given again.")
  private Map<String, String> spellings = new LinkedHashMap<>();

  @Option(
      names = "--state",
      paramLabel = "SENT=MEANING",
      description = "What a state means: ok, unstable or over; may be given again.")
  private Map<String, String> states = new LinkedHashMap<>();

  @Option(names = "--decimal", paramLabel = "MARK", description = "The decimal mark, '.' or ','.")
  private @Nullable Character decimal;

  @Option(names = "--unattended", description = "Ask nothing; say what would have been asked.")
  private boolean unattended;

  @Mixin private final LineOption line = new LineOption();
  @Mixin private final DefinitionOption definitions = new DefinitionOption();

  @Override
  public Integer call() throws Exception {
    Face face = Face.standard(UnitSystem.SI);
    Path file = out == null ? definitions.home().resolve(name + ".toml") : out;
    checkOptions(file);
    Sample bytes = sample == null ? typed(face) : DefinitionOption.sample(sample);
    Hints hints = hints();
    Draft draft = DefinitionDraft.of(bytes, hints);
    if (!draft.questions().isEmpty() && !unattended) {
      hints = new DraftQuestions(face).answer(draft.questions(), hints);
      draft = DefinitionDraft.of(bytes, hints);
    }
    draft.notes().forEach(face::line);
    refuseUnwritten(draft);
    DeviceDefinition definition = parsed(draft);
    SampleReport report = SampleDecoder.decode(definition, bytes);
    write(file, draft.text());
    show(face, file, definition, bytes, report);
    return report.isComplete() ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private void checkOptions(Path file) throws CommandException {
    if (!name.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw usage("--name " + name + " cannot be: use lower-case letters, digits and hyphens");
    }
    if (Files.exists(file)) {
      throw usage(
          file + " is there already and is never overwritten; choose another --name or --out");
    }
    if (decimal != null && decimal != '.' && decimal != ',') {
      throw usage("--decimal " + decimal + " cannot be: the mark is '.' or ','");
    }
    for (String unit : units) {
      if (!unit.equals(Hints.PASS_OVER)) {
        checkUnit("--unit " + unit, unit);
      }
    }
    for (Map.Entry<String, String> spelling : spellings.entrySet()) {
      checkUnit("--spelling " + spelling.getKey() + "=" + spelling.getValue(), spelling.getValue());
    }
    for (Map.Entry<String, String> state : states.entrySet()) {
      if (!List.of("ok", "unstable", "over").contains(state.getValue())) {
        throw usage(
            "--state "
                + state.getKey()
                + "="
                + state.getValue()
                + " cannot be: a state means ok, unstable or over");
      }
    }
  }

  private static void checkUnit(String option, String unit) throws CommandException {
    if (DraftQuestions.unit(unit).isEmpty()) {
      throw usage(
          option
              + " cannot be: a load is in "
              + symbols(Quantity.FORCE)
              + "; a gauge in "
              + symbols(Quantity.LENGTH));
    }
  }

  static String symbols(Quantity quantity) {
    List<String> symbols = new ArrayList<>();
    for (Unit unit : Unit.values()) {
      if (unit.quantity() == quantity) {
        symbols.add(unit.symbol());
      }
    }
    return String.join(", ", symbols);
  }

  private static CommandException usage(String words) {
    return new CommandException(ExitCode.USAGE, words);
  }

  private Sample typed(Face face) throws CommandException {
    if (unattended) {
      throw usage("--sample LOG is missing; 'platenwire listen PORT --save LOG' writes one");
    }
    return new DraftQuestions(face).lines();
  }

  private Hints hints() throws CommandException {
    List<String> serial = new ArrayList<>();
    if (line.isSet()) {
      LineSettings settings = line.over(LineSettings.COMMON);
      serial.add("baud = " + settings.baud());
      serial.add("data-bits = " + settings.dataBits());
      serial.add("parity = \"" + settings.parity().name().toLowerCase(Locale.ROOT) + "\"");
      serial.add("stop-bits = " + settings.stopBits());
    }
    return new Hints(name, serial, Optional.ofNullable(decimal), units, spellings, states);
  }

  private static void refuseUnwritten(Draft draft) throws CommandException {
    if (!draft.questions().isEmpty()) {
      List<String> open = new ArrayList<>();
      for (Question question : draft.questions()) {
        String option =
            question.kind() == Question.Kind.UNIT
                ? "--unit UNIT"
                : "--spelling " + question.about() + "=UNIT";
        open.add(question.words() + " (" + option + ")");
      }
      throw usage(
          "nothing was written, because the bytes do not tell all: " + String.join(" ", open));
    }
    if (draft.text().isEmpty()) {
      throw new CommandException(
          ExitCode.NOT_MET, "nothing was written: no definition could be inferred");
    }
  }

  private static DeviceDefinition parsed(Draft draft) throws CommandException {
    try {
      return DeviceDefinition.parse(draft.text(), "the draft");
    } catch (TomlException e) {
      throw new CommandException(
          ExitCode.NOT_MET,
          "nothing was written: the parts of these lines cannot be told apart by a definition ("
              + e.getMessage()
              + "). Write it by hand; devices/README.md shows how",
          e);
    }
  }

  private static void write(Path file, String text) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    Files.writeString(file, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
  }

  private void show(
      Face face, Path file, DeviceDefinition definition, Sample bytes, SampleReport report) {
    face.line("");
    face.lines(SampleView.lines(definition, bytes, report, 3, face));
    face.line("");
    face.line("Written: " + file + ". Look through it, then hold it against the log again:");
    face.line(
        "  platenwire device check " + file + " --sample " + (sample == null ? "LOG" : sample));
  }
}
