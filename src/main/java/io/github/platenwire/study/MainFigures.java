package io.github.platenwire.study;

import io.github.platenwire.method.MethodResult.Figure;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * Which figures of a test matter most: those that stand at the head of its report, and those by
 * which the series of a study are compared when nothing else is asked. Stateless.
 */
public final class MainFigures {
  private static final String IN_TIME = "-in-time";
  private static final String IN_ROOT_TIME = "-in-root-time";

  /** Times to depths; each has two more for the ends of its interval. */
  private static final String TIME_TO = "time-to-[0-9.]+-mm";

  /** By which a study is compared, of whatever method. */
  private static final List<String> COMPARED =
      List.of("strength", "modulus", "poisson", "initial-rate", "secondary-rate");

  private static final List<String> HEADLINES =
      List.of(
          "strength",
          "modulus",
          "poisson",
          "initial-rate",
          "secondary-rate",
          "absorption",
          "first-crack-departure",
          "load-at-0.30-mm",
          "peak-load",
          "last-depth",
          "age");

  private MainFigures() {}

  /** The figures of a test that matter most, the first of them most; never none if it has any. */
  public static List<Figure> ofTest(List<Figure> figures) {
    List<String> names = figures.stream().map(Figure::name).toList();
    List<String> wanted = new ArrayList<>(ofFront(names));
    wanted.addAll(HEADLINES);
    List<Figure> found = new ArrayList<>();
    for (String name : wanted) {
      figures.stream().filter(figure -> figure.name().equals(name)).forEach(found::add);
    }
    return found.isEmpty() ? figures.stream().limit(2).toList() : found;
  }

  /**
   * The figures by which series are compared.
   *
   * @param names of the figures that all their tests came to, as often as they came
   * @return by importance; empty if there is none of them
   */
  static List<String> compared(Collection<String> names) {
    List<String> compared = new ArrayList<>(COMPARED.stream().filter(names::contains).toList());
    compared.addAll(ofFront(names));
    return compared;
  }

  /** Whether a figure is compared even where no age is known: of water's way, not of a strength. */
  static boolean mayLackAge(String figure) {
    return figure.matches("(rate|time|deviation|last)-.*|.*-rate|absorption");
  }

  /**
   * Of a front: the slope of the line that the readings follow, or of both lines where they do not
   * tell, and for each the time to the greatest of the depths to which most tests have one.
   */
  private static List<String> ofFront(Collection<String> names) {
    List<String> found = new ArrayList<>();
    for (String shape : shapes(names)) {
      found.add("rate" + shape);
      timeTo(names, shape).ifPresent(found::add);
    }
    return found;
  }

  private static List<String> shapes(Collection<String> names) {
    List<String> both =
        List.of(IN_TIME, IN_ROOT_TIME).stream()
            .filter(shape -> names.contains("rate" + shape))
            .toList();
    List<String> told =
        both.stream()
            .filter(shape -> names.stream().anyMatch(name -> name.matches(TIME_TO + shape)))
            .toList();
    return told.isEmpty() ? both : told;
  }

  private static Optional<String> timeTo(Collection<String> names, String shape) {
    List<String> times = names.stream().filter(name -> name.matches(TIME_TO + shape)).toList();
    String most = "";
    for (String name : times) {
      long count = count(times, name);
      long best = count(times, most);
      boolean deeper = most.isEmpty() || depth(name) > depth(most);
      most = count > best || (count == best && deeper) ? name : most;
    }
    return most.isEmpty() ? Optional.empty() : Optional.of(most);
  }

  private static long count(List<String> names, String name) {
    return names.stream().filter(name::equals).count();
  }

  private static double depth(String name) {
    return Double.parseDouble(name.replaceFirst("time-to-([0-9.]+)-mm.*", "$1"));
  }
}
