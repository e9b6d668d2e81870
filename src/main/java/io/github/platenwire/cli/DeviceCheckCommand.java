package io.github.platenwire.cli;

import io.github.platenwire.commission.Sample;
import io.github.platenwire.commission.SampleDecoder;
import io.github.platenwire.commission.SampleReport;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.quantity.UnitSystem;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code device check}: what a definition makes of captured bytes. */
@Command(
    name = "check",
    description = {
      "Decode captured bytes by a definition: what was decoded, what was not, why, and at which byte.",
      "Ends with 1 if anything was not decoded. A frame that the log cuts off at its beginning or"
          + " end is named, but counts for nothing."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire device check devices/bench-load.toml --sample bench.bytes",
      "  platenwire device check signed-line-kn --sample capture.bin --json"
    })
final class DeviceCheckCommand implements Callable<Integer> {
  private static final int SHOWN = 10;

  @Parameters(
      paramLabel = "FILE",
      description = "A definition's file, or its name in the lab folder or among those shipped.")
  private String file = "";

  @Option(
      names = "--sample",
      paramLabel = "LOG",
      required = true,
      description = "A byte log, or a plain file of the bytes as captured.")
  private Path sample = Path.of("");

  @Option(names = "--all", description = "Show every stretch that was not decoded, not only ten.")
  private boolean all;

  @Option(names = "--json", description = "Print a JSON object instead.")
  private boolean json;

  @Mixin private final DefinitionOption definitions = new DefinitionOption();

  @Override
  public Integer call() throws Exception {
    DeviceDefinition definition = definitions.find(file);
    Sample bytes = DefinitionOption.sample(sample);
    SampleReport report = SampleDecoder.decode(definition, bytes);
    Face face = Face.standard(UnitSystem.SI);
    face.lines(
        json
            ? List.of(SampleJson.text(definition, bytes, report))
            : SampleView.lines(definition, bytes, report, all ? Integer.MAX_VALUE : SHOWN, face));
    return report.isComplete() ? ExitCode.FINE : ExitCode.NOT_MET;
  }
}
