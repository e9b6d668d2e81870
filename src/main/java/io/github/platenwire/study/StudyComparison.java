package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.method.Companions;
import io.github.platenwire.method.VirginTable;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.Values;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Series held against their reference: one figure at each age, its trend over age, cracks over
 * their shared range, and what people saw. Every figure leads to its record and row. Values are in
 * the figure's unit. Immutable.
 *
 * @param subject what is compared
 * @param reference the series that the others are held against, unless the plan gives one its own
 * @param sets each series at each age, in the order of the plan; by age
 * @param ages the series against their reference, at each age at which both have a specimen
 * @param trends each series over its ages, where it has more than one
 * @param cracks each series' cracks against the reference's; empty when no crack was followed
 * @param observations what people saw, series beside series
 * @param sentences the same in plain sentences, in the order of the above
 * @param warnings what speaks against taking a figure at its face, in whole sentences
 */
public record StudyComparison(
    Subject subject,
    String reference,
    List<SeriesSet> sets,
    List<AgeComparison> ages,
    List<SeriesTrend> trends,
    List<CrackComparison> cracks,
    List<Observation> observations,
    List<String> sentences,
    List<String> warnings) {
  /** Makes the lists immutable. */
  public StudyComparison {
    sets = List.copyOf(sets);
    ages = List.copyOf(ages);
    trends = List.copyOf(trends);
    cracks = List.copyOf(cracks);
    observations = List.copyOf(observations);
    sentences = List.copyOf(sentences);
    warnings = List.copyOf(warnings);
  }

  /**
   * Compares the series of a study.
   *
   * @param data the study
   * @param question what is to be compared
   * @throws LabException if the question names what the study has not, or no test came to the
   *     figure; the message says what there is
   */
  public static StudyComparison of(StudyData data, StudyQuestion question) throws LabException {
    return new ComparisonMaker(data, question).make();
  }

  /**
   * Compares the series of a study by everything that matters: the main figures of each method that
   * they were tested by, strengths first. Figures of different methods are never compared.
   *
   * @throws LabException if the study cannot be compared
   */
  public static List<StudyComparison> main(StudyData data) throws LabException {
    return MainComparisons.of(data);
  }

  /**
   * What is compared.
   *
   * @param figure its short name, such as {@code strength}
   * @param title its name for a person, such as {@code Compressive strength}
   * @param unit the SI unit of every value here
   * @param inchPoundUnit the unit shown beside it; the same where the trade has no other
   * @param method the method that gave it
   * @param methodTitle the method in words
   * @param standard the standard it computes by
   */
  public record Subject(
      String figure,
      String title,
      Unit unit,
      Unit inchPoundUnit,
      String method,
      String methodTitle,
      String standard) {}

  /**
   * One specimen's value.
   *
   * @param specimen its name
   * @param value not rounded
   * @param rounded as its summary prints it, in the SI unit
   * @param inchPoundRounded as its summary prints it, in the other unit
   * @param uncertainty its budget, where there is one
   * @param trueAgeDays its age when it was tested, where its cast time is known
   * @param record the raw file, relative to the lab folder
   * @param rows numbers of the raw rows it rests on
   */
  public record SpecimenValue(
      String specimen,
      double value,
      String rounded,
      String inchPoundRounded,
      Optional<UncertaintyBudget> uncertainty,
      OptionalDouble trueAgeDays,
      String record,
      List<Long> rows) {
    /** Makes the list immutable. */
    public SpecimenValue {
      rows = List.copyOf(rows);
    }
  }

  /**
   * One series at one age.
   *
   * @param series its name
   * @param label what people call it
   * @param ageDays the planned age, or the true one in whole days where none is planned; NaN where
   *     neither is known and the figure is of water's way
   * @param planned how many specimens the plan asks for at this age; 0 if it asks for none
   * @param values each specimen's, in the order of testing
   * @param statistics of the values
   * @param companions their range against the printed limit, where the method has one
   * @param suspect a value that Grubbs' test names; it is kept in every figure
   */
  public record SeriesSet(
      String series,
      String label,
      double ageDays,
      int planned,
      List<SpecimenValue> values,
      SeriesStatistics statistics,
      Optional<Companions.Verdict> companions,
      Optional<Suspect> suspect) {
    /** Makes the list immutable. */
    public SeriesSet {
      values = List.copyOf(values);
    }
  }

  /**
   * A value that chance hardly explains.
   *
   * @param specimen whose it is
   * @param finding what the test says
   */
  public record Suspect(String specimen, Grubbs.Finding finding) {}

  /**
   * All series that have one reference, against it, at one age.
   *
   * @param ageDays the age; NaN where it is not known
   * @param reference the series they are held against
   * @param series each against the reference, in the order of the plan
   * @param choice which intervals these are and why, in one line
   */
  public record AgeComparison(
      double ageDays, String reference, List<AgainstReference> series, String choice) {
    /** Makes the list immutable. */
    public AgeComparison {
      series = List.copyOf(series);
    }
  }

  /**
   * One series against the reference at one age.
   *
   * @param series its name
   * @param ratio its mean over the reference's, with the set that holds for all series at once
   * @param calibrated the same with calibration in its interval; empty where the set has not two
   *     ends or no budget tells of a calibration
   * @param difference its mean less the reference's, with Welch's interval for this pair alone
   * @param differenceInterval the interval of the difference that holds for all series at once;
   *     Welch's where there is but one series; empty when there are too few specimens
   * @param sentences ratio and difference in words
   */
  public record AgainstReference(
      String series,
      FiellerRatio ratio,
      Optional<CalibratedRatio> calibrated,
      WelchDifference difference,
      Optional<Interval> differenceInterval,
      List<String> sentences) {
    /** Makes the list immutable. */
    public AgainstReference {
      sentences = List.copyOf(sentences);
    }

    /** The interval of the ratio to be shown: calibration included where it can be. */
    public Optional<Interval> ratioInterval() {
      if (calibrated.isPresent()) {
        return calibrated.map(CalibratedRatio::interval);
      }
      return ratio.set() instanceof ConfidenceSet.Bounded bounded
          ? Optional.of(bounded.interval())
          : Optional.empty();
    }
  }

  /**
   * One series over its ages.
   *
   * @param series its name
   * @param trend slope on ln(age) and what may be said of the gain
   * @param aci the curve of ACI 209R fitted; only of a strength in MPa
   * @param en the curve of EN 1992-1-1 fitted; only of a strength in MPa
   * @param sentences the same in words
   */
  public record SeriesTrend(
      String series,
      AgeTrend trend,
      Optional<AgeCurves.AciFit> aci,
      Optional<AgeCurves.EnFit> en,
      List<String> sentences) {
    /** Makes the list immutable. */
    public SeriesTrend {
      sentences = List.copyOf(sentences);
    }

    /** The 95 % interval of the slope on ln(age), MPa; empty where no line can be laid. */
    public Optional<Interval> slopeInterval() {
      return trend.line().map(line -> line.slopeInterval(Values.LEVEL));
    }
  }

  /**
   * One specimen's crack on first loading.
   *
   * @param specimen its name
   * @param curve width against load
   * @param record the raw file, relative to the lab folder
   */
  public record SpecimenCurve(String specimen, VirginTable curve, String record) {}

  /**
   * The cracks of one series against those of the reference, of one method and age.
   *
   * @param series its name
   * @param reference the reference's name
   * @param method the method by which both were opened
   * @param ageDays their age; empty where it is not known
   * @param first the series' curves
   * @param second the reference's curves
   * @param atLoads ratio of widths, series over reference, by rising load in newtons; empty when no
   *     load was reached by all
   * @param atWidths ratio of loads, series over reference, by rising width in millimetres
   * @param widthUncertaintyMillimetres standard uncertainty of one width, without calibration
   * @param calibration what became of the calibrations, in one line
   * @param sentences the same in words
   */
  public record CrackComparison(
      String series,
      String reference,
      String method,
      OptionalDouble ageDays,
      List<SpecimenCurve> first,
      List<SpecimenCurve> second,
      List<CrackRatio.At> atLoads,
      List<CrackRatio.At> atWidths,
      double widthUncertaintyMillimetres,
      String calibration,
      List<String> sentences) {
    /** Makes the lists immutable. */
    public CrackComparison {
      first = List.copyOf(first);
      second = List.copyOf(second);
      atLoads = List.copyOf(atLoads);
      atWidths = List.copyOf(atWidths);
      sentences = List.copyOf(sentences);
    }
  }

  /**
   * One thing that people saw, series beside series.
   *
   * @param what such as {@code through the aggregate}
   * @param ageDays the age; empty where it is not known
   * @param counts by series, the reference last
   * @param sentence the same in words
   */
  public record Observation(
      String what, OptionalDouble ageDays, List<Count> counts, String sentence) {
    /** Makes the list immutable. */
    public Observation {
      counts = List.copyOf(counts);
    }
  }

  /**
   * How often a thing was seen.
   *
   * @param series its name
   * @param seen specimens in which it was seen
   * @param looked specimens of which anything of that kind was noted
   */
  public record Count(String series, int seen, int looked) {}
}
