package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.UnitSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** A lab folder with one rig at a given port and one 4 × 8 in cylinder. */
final class TestLab {
  static final String SPECIMEN = "T-07-1";

  private TestLab() {}

  static Path make(Path folder, String port) throws Exception {
    String rig =
        """
        format = "platenwire-rig 1"
        name = "frame"
        title = "Test frame"
        [[channel]]
        name = "load"
        quantity = "force"
        unit = "lbf"
        port = "%s"
        device = "signed-line-lbf"
        range = [-1000, 120000]
        zero-tolerance = 100
        late-after-ms = 5000
        resolution = 1
        """
            .formatted(port);
    String specimens =
        """
        specimen,series,shape,diameter_1_in,diameter_2_in,length_in,cast,age_days,ends
        %s,T,cylinder,4.00,4.00,8.00,2020-01-01 08:00,7,ground
        """
            .formatted(SPECIMEN);
    LabTemplate template =
        LabTemplate.example("Test lab", ZoneOffset.UTC, UnitSystem.INCH_POUND)
            .withRigs(Map.of("frame", rig))
            .withSpecimens(specimens);
    return LabFolder.create(folder, template).root();
  }

  static Path only(Path lab, String ending) throws Exception {
    List<Path> found;
    try (Stream<Path> files = Files.walk(lab.resolve("records"))) {
      found = files.filter(file -> file.toString().endsWith(ending)).toList();
    }
    if (found.size() != 1) {
      throw new AssertionError("one file *" + ending + " expected, but there are " + found);
    }
    return found.get(0);
  }
}
