package io.github.platenwire.audit;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.record.RawHeader;
import java.nio.file.Path;
import java.util.List;

/**
 * What every part of an audit needs. Immutable; safe for any threads.
 *
 * @param lab the lab folder
 * @param scope what is looked at
 * @param tables what people keep in the lab folder today
 * @param detectors look at the readings
 */
record AuditContext(LabFolder lab, Scope scope, LabTables tables, List<TraceDetector> detectors) {
  AuditContext {
    detectors = List.copyOf(detectors);
  }

  /** A file as findings name it. */
  String relative(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    Path shown = absolute.startsWith(lab.root()) ? lab.root().relativize(absolute) : absolute;
    return shown.toString().replace('\\', '/');
  }

  /** Lets every detector begin with a record. */
  List<TraceDetector.Watch> watches(String file, RawHeader header) {
    return detectors.stream().map(detector -> detector.begin(file, header)).toList();
  }
}
