package io.github.platenwire.study;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Published data sets; a test that needs one is skipped, by its name, where they are not there. */
final class CheckData {
  private final List<String> names;
  private final List<String[]> rows;

  private CheckData(List<String> names, List<String[]> rows) {
    this.names = names;
    this.rows = rows;
  }

  static CheckData read(String file) throws IOException {
    String folder = System.getenv("PLATENWIRE_CHECK_DATA");
    assumeTrue(folder != null, file + " needs PLATENWIRE_CHECK_DATA, the folder of check data");
    List<String[]> rows = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of(folder, file), StandardCharsets.UTF_8)) {
      if (!line.startsWith("#") && !line.isBlank()) {
        rows.add(line.strip().split(",", -1));
      }
    }
    List<String> names = List.of(rows.remove(0));
    return new CheckData(names, rows);
  }

  double[] column(String name) {
    int column = names.indexOf(name);
    return rows.stream().mapToDouble(row -> Double.parseDouble(row[column])).toArray();
  }

  Map<String, double[]> groups(String group, String value) {
    Map<String, List<Double>> lists = new LinkedHashMap<>();
    for (String[] row : rows) {
      lists
          .computeIfAbsent(row[names.indexOf(group)], name -> new ArrayList<>())
          .add(Double.valueOf(row[names.indexOf(value)]));
    }
    Map<String, double[]> groups = new LinkedHashMap<>();
    lists.forEach(
        (name, list) -> groups.put(name, list.stream().mapToDouble(Double::doubleValue).toArray()));
    return groups;
  }

  /** How many decimal digits of a certified value are met: −log10 of the relative error. */
  static double digits(double found, double certified) {
    if (found == certified) {
      return 16;
    }
    return -Math.log10(Math.abs(found - certified) / Math.abs(certified));
  }
}
