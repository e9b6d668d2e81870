package io.github.platenwire.explain;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.FrontPart;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.List;
import java.util.Optional;

/**
 * Tells of the absorption of water by mass and of its rate on the root of time (ASTM C1585).
 * Immutable.
 */
final class AbsorptionStory implements Story {
  private static final String RATE = "-rate";

  /** Ends the name of the figure that tells where a rate's line begins, at time zero. */
  private static final String INTERCEPT = "-intercept";

  private final Evidence evidence;
  private final List<FrontPart.Reading> readings;

  AbsorptionStory(Evidence evidence) {
    this.evidence = evidence;
    readings = evidence.trail().readings();
  }

  @Override
  public boolean tells(Figure figure) {
    return evidence.kind().equals("absorption")
        && !readings.isEmpty()
        && (figure.name().equals("absorption") || isOfALine(figure));
  }

  private static boolean isOfALine(Figure figure) {
    return figure.name().endsWith(RATE) || figure.name().endsWith(INTERCEPT);
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    boolean rate = isOfALine(figure);
    List<FrontPart.Reading> counted = rate ? within(figure.name()) : readings;
    new ReadingsList(evidence).tell(counted, telling);
    if (rate) {
      telling.more(
          "Of all "
              + readings.size()
              + " readings (rows "
              + readings.get(0).seq()
              + " to "
              + readings.get(readings.size() - 1).seq()
              + ") these lie in the stretch of time that the rate is asked for.");
    }
    new SizeStory(evidence).measured(telling);
    telling.more("Face in the water:");
    telling.formula(face(), Unit.SQUARE_MILLIMETRE, Unit.SQUARE_INCH);
    telling.step(
        "Absorption: the mass gained since the first reading ("
            + evidence.inShort(readings.get(0).seq())
            + ") over the face times the density of water"
            + evidence.clause(FigureWords.Topic.STRESS)
            + ", here of the last reading:");
    Formula last = absorbed(counted.get(counted.size() - 1));
    if (rate) {
      telling.formula(last, Unit.MILLIMETRE, Unit.INCH);
      slope(counted, figure, telling);
    } else {
      telling.formula(last, figure);
    }
  }

  /** The readings of a stretch of time. */
  private List<FrontPart.Reading> within(String name) {
    TomlSection stretch = stretch(name.substring(0, name.lastIndexOf('-'))).orElseThrow();
    double from = number(stretch, "from-seconds");
    double to = number(stretch, "to-seconds");
    return readings.stream().filter(one -> one.seconds() >= from && one.seconds() <= to).toList();
  }

  private Optional<TomlSection> stretch(String name) {
    try {
      for (TomlSection one : evidence.method().section("absorption").sections("stretch")) {
        if (one.string("name").equals(name)) {
          return Optional.of(one);
        }
      }
      return Optional.empty();
    } catch (TomlException e) {
      throw new IllegalStateException("the method was read before", e);
    }
  }

  private static double number(TomlSection section, String key) {
    try {
      return section.number(key);
    } catch (TomlException e) {
      throw new IllegalStateException("the method was read before", e);
    }
  }

  private Formula face() {
    List<Double> diameters = evidence.specimen().diametersMillimetres();
    if (diameters.isEmpty()) {
      return Formula.of(
          "width x depth",
          "{} x {}",
          n -> n[0] * n[1],
          Term.millimetres(evidence.specimen().dimension(Dimension.WIDTH).orElseThrow()),
          Term.millimetres(evidence.specimen().dimension(Dimension.DEPTH).orElseThrow()));
    }
    double mean = diameters.stream().mapToDouble(one -> one).average().orElseThrow();
    return Formula.of(
        "pi d² / 4", "pi x ({})² / 4", n -> Math.PI * n[0] * n[0] / 4, Term.millimetres(mean));
  }

  private Formula absorbed(FrontPart.Reading reading) {
    return Formula.inSi(
        "(m - m0) / (A x density)",
        "({} g - {} g) / ({} mm² x {} g/mm³)",
        n -> (n[0] - n[1]) / (n[2] * n[3]),
        Term.plain(Unit.GRAM.fromBase(reading.base())),
        Term.plain(Unit.GRAM.fromBase(readings.get(0).base())),
        Term.plain(face().result()),
        Term.plain(evidence.number("absorption", "water-g-per-mm3")));
  }

  private void slope(List<FrontPart.Reading> counted, Figure figure, Telling telling) {
    LineSums line = line(counted);
    telling.step(
        "Line of absorption i on the root of time, x = sqrt(t), by least squares through the "
            + line.count()
            + " readings of this stretch of time. Correlation r, at least "
            + FigureWords.number(evidence.number("absorption", "least-correlation"))
            + " being asked:");
    correlation(line, telling);
    telling.step("Its slope, with the sums of the differences from the centre:");
    Formula slope =
        Formula.inSi(
            "sum of i x / sum of x²",
            "{} mm sqrt(s) / {} s",
            n -> n[0] / n[1],
            Term.plain(line.xy()),
            Term.plain(line.xx()));
    if (figure.name().endsWith(RATE)) {
      telling.formula(slope, figure);
      return;
    }
    telling.formula(slope, Unit.MILLIMETRE_PER_ROOT_SECOND, Unit.INCH_PER_ROOT_SECOND);
    telling.step("The line goes through its centre; followed back to time zero it begins at:");
    telling.formula(
        Formula.inSi(
            "mean i - slope x mean x",
            "{} mm - {} x {} mm",
            n -> n[0] - n[1] * n[2],
            Term.plain(line.meanY()),
            Term.plain(line.slope()),
            Term.plain(line.meanX())),
        figure);
  }

  private static void correlation(LineSums line, Telling telling) {
    telling.formula(
        Formula.of(
            "sum of i x / sqrt(sum of x² x sum of i²)",
            "{} / sqrt({} x {})",
            n -> n[0] / Math.sqrt(n[1] * n[2]),
            Term.plain(line.xy()),
            Term.plain(line.xx()),
            Term.plain(line.yy())),
        Unit.ONE,
        Unit.ONE);
  }

  private LineSums line(List<FrontPart.Reading> counted) {
    return LineSums.of(
        counted.stream()
            .map(one -> new LineSums.Point(Math.sqrt(one.seconds()), absorbed(one).result()))
            .toList());
  }

  /** Why a stretch of time has no rate: its line, if there is one. */
  void withoutRate(String name, Telling telling) {
    List<FrontPart.Reading> counted = within(name);
    if (counted.size() < 3) {
      return;
    }
    new ReadingsList(evidence).tell(counted, telling);
    telling.step("Correlation of absorption i with the root of time, x = sqrt(t):");
    correlation(line(counted), telling);
  }

  /** Whether a name is that of a rate over one of the method's stretches of time. */
  boolean isRate(String name) {
    return evidence.kind().equals("absorption")
        && name.endsWith(RATE)
        && stretch(name.substring(0, name.length() - RATE.length())).isPresent();
  }
}
