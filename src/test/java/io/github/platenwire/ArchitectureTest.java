package io.github.platenwire;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * The rules of the house, held against the compiled program; and each rule held against small
 * classes that break it, compiled on the spot, to show that it bites.
 */
class ArchitectureTest {
  private static final String HOUSE = "io.github.platenwire";

  /** From the ground up: a package imports only from those before it. */
  private static final List<String> FLOORS =
      List.of(
          "toml",
          "quantity",
          "statistics",
          "reading",
          "port",
          "device",
          "commission",
          "live",
          "calibration",
          "method",
          "record",
          "lab",
          "recorder",
          "explain",
          "study",
          "audit",
          "emulate",
          "bench",
          "chart",
          "report",
          "terminal",
          "window",
          "cli");

  /** So that no rule can pass on nothing; to be raised as the house grows. */
  private static final int FEWEST_CLASSES = 90;

  private static final Pattern CLOCK =
      Pattern.compile(
          "java\\.lang\\.System\\.(nanoTime|currentTimeMillis)\\(\\)"
              + "|java\\.time\\.(\\w+|chrono\\.\\w+)\\.now\\(.*\\)"
              + "|java\\.time\\.(Clock|InstantSource)\\.(system|tick)\\w*\\(.*\\)"
              + "|java\\.util\\.Date\\.<init>\\(\\)"
              + "|java\\.util\\.(Calendar\\.getInstance|GregorianCalendar\\.<init>)\\(.*\\)");

  private static final Pattern CHARSET =
      Pattern.compile(
          "java\\.nio\\.charset\\.Charset\\.defaultCharset\\(\\)"
              + "|java\\.lang\\.String\\.getBytes\\(\\)"
              + "|java\\.lang\\.String\\.<init>\\(byte\\[\\](, int, int)?\\)"
              + "|java\\.io\\.File(Reader|Writer)\\.<init>\\((?!.*Charset).*\\)"
              + "|java\\.io\\.(InputStreamReader|OutputStreamWriter)\\.<init>\\(\\w+\\)"
              + "|java\\.io\\.Print(Stream|Writer)\\.<init>\\((OutputStream|String|File)(, boolean)?\\)"
              + "|java\\.util\\.Scanner\\.<init>\\((InputStream|File|Path)\\)"
              + "|java\\.io\\.ByteArrayOutputStream\\.toString\\(\\)");

  private static final Pattern LOCALE =
      Pattern.compile(
          "java\\.util\\.Locale\\.getDefault\\(.*\\)"
              + "|java\\.lang\\.String\\.(format|formatted)\\((?!Locale).*\\)"
              + "|java\\.lang\\.String\\.to(Lower|Upper)Case\\(\\)"
              + "|java\\.io\\.Print(Stream|Writer)\\.(printf|format)\\((?!Locale).*\\)"
              + "|java\\.util\\.Formatter\\.<init>\\((?!.*Locale).*\\)"
              + "|java\\.text\\.\\w+\\.get\\w*Instance\\((int(, int)?)?\\)"
              + "|java\\.text\\.(DecimalFormat|SimpleDateFormat|MessageFormat)\\.<init>\\(String\\)"
              + "|java\\.text\\.(DecimalFormat|SimpleDateFormat|DecimalFormatSymbols)\\.<init>\\(\\)"
              + "|java\\.text\\.MessageFormat\\.format\\(.*\\)"
              + "|java\\.time\\.format\\.DateTimeFormatter\\.ofPattern\\(String\\)");

  private static final Pattern ZONE =
      Pattern.compile(
          "java\\.time\\.ZoneId\\.systemDefault\\(\\)|java\\.util\\.TimeZone\\.getDefault\\(\\)");

  private static final Pattern CONSOLE =
      Pattern.compile(
          "java\\.lang\\.System\\.(out|err)|java\\.lang\\.\\w+\\.printStackTrace\\(\\)");

  private static JavaClasses house;
  private static JavaClasses houseWithTests;
  private static JavaClasses wrong;

  @BeforeAll
  static void readClasses(@TempDir Path folder) throws IOException {
    houseWithTests = new ClassFileImporter().importPackages(HOUSE);
    house = houseWithTests.that(DescribedPredicate.describe("no tests", c -> !isTest(c)));
    wrong = WrongClass.compile(folder);
  }

  private static boolean isTest(JavaClass item) {
    return item.getSource()
        .map(source -> source.getUri().getPath().contains("/test-classes/"))
        .orElse(true);
  }

  /** The rules for the program itself, under a base package, each with a name. */
  private static Map<String, ArchRule> rules(String base) {
    Map<String, ArchRule> rules = new LinkedHashMap<>();
    rules.put("floors", rule("import only from packages below", (c, e) -> floors(base, c, e)));
    rules.put("cycles", slices().matching(base + ".(*)..").should().beFreeOfCycles());
    rules.put("null", rule("live in a null-marked package", ArchitectureTest::nullMarked));
    rules.put("final", rule("be final, if public and concrete", ArchitectureTest::closed));
    rules.put("clock", shun(CLOCK, c -> c.getFullName().equals(base + ".reading.SystemClocks")));
    rules.put("charset", shun(CHARSET, c -> false));
    rules.put("locale", shun(LOCALE, c -> false));
    rules.put("zone", shun(ZONE, c -> isIn(base, c, "cli")));
    rules.put("console", shun(CONSOLE, c -> isIn(base, c, "terminal", "cli")));
    rules.put(
        "interrupt",
        rule(
            "never interrupt a thread, nor raise the flag of their own where files are written",
            shun(access -> interrupts(access) && !raisesOwnFlag(base, access))));
    return rules;
  }

  /** The one rule that holds for tests too. */
  private static ArchRule noSleep() {
    return rule("wait on conditions, never just for time", shun(ArchitectureTest::sleeps));
  }

  @TestFactory
  Stream<DynamicTest> rule_house_isKept() {
    return rules(HOUSE).entrySet().stream()
        .map(rule -> DynamicTest.dynamicTest(rule.getKey(), () -> rule.getValue().check(house)));
  }

  @Test
  void sleep_houseAndTests_nowhere() {
    noSleep().check(houseWithTests);
  }

  @Test
  void classes_scanned_areNotTooFew() {
    assertThat(house.size()).isGreaterThanOrEqualTo(FEWEST_CLASSES);
    assertThat(houseWithTests.size()).isGreaterThan(house.size());
  }

  @TestFactory
  Stream<DynamicTest> rule_wrongClasses_bites() {
    Map<String, ArchRule> rules = rules("wrong");
    rules.put("sleep", noSleep());
    assertThat(WrongClass.ALL.stream().map(WrongClass::rule)).containsAll(rules.keySet());
    return WrongClass.ALL.stream()
        .map(
            sample ->
                DynamicTest.dynamicTest(
                    sample.rule() + " " + sample.name(),
                    () -> assertThat(broken(rules, sample)).isEqualTo(sample.bites())));
  }

  private static boolean broken(Map<String, ArchRule> rules, WrongClass sample) {
    ArchRule rule = rules.get(sample.rule());
    Pattern name = Pattern.compile("\\b" + Pattern.quote(sample.name()) + "\\b");
    return rule.evaluate(wrong).getFailureReport().getDetails().stream()
        .anyMatch(detail -> name.matcher(detail).find());
  }

  private static ArchRule rule(String words, BiConsumer<JavaClass, ConditionEvents> check) {
    return classes()
        .should(
            new ArchCondition<JavaClass>(words) {
              @Override
              public void check(JavaClass item, ConditionEvents events) {
                check.accept(item, events);
              }
            });
  }

  private static ArchRule shun(Pattern forbidden, Predicate<JavaClass> exempt) {
    BiConsumer<JavaClass, ConditionEvents> check =
        shun(access -> forbidden.matcher(signature(access)).matches());
    return rule(
        "shun " + forbidden,
        (item, events) -> {
          if (!exempt.test(item)) {
            check.accept(item, events);
          }
        });
  }

  /** Calls, method references and uses of fields alike. */
  private static BiConsumer<JavaClass, ConditionEvents> shun(Predicate<JavaAccess<?>> forbidden) {
    return (item, events) ->
        item.getAccessesFromSelf().stream()
            .filter(forbidden)
            .forEach(
                access ->
                    events.add(SimpleConditionEvent.violated(access, access.getDescription())));
  }

  /** {@code java.lang.String.getBytes(Charset)}; without brackets for a field. */
  private static String signature(JavaAccess<?> access) {
    String name = access.getTargetOwner().getFullName() + "." + access.getTarget().getName();
    if (access.getTarget() instanceof CodeUnitAccessTarget target) {
      return target.getRawParameterTypes().stream()
          .map(JavaClass::getSimpleName)
          .collect(Collectors.joining(", ", name + "(", ")"));
    }
    return name;
  }

  private static boolean interrupts(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    return switch (access.getTarget().getName()) {
      case "interrupt", "stop" -> owner.isAssignableTo(Thread.class);
      case "shutdownNow" -> owner.isAssignableTo(ExecutorService.class);
      case "cancel" -> owner.isAssignableTo(Future.class);
      default -> false;
    };
  }

  /** Raising the flag of one's own thread again, outside the packages that hold file channels. */
  private static boolean raisesOwnFlag(String base, JavaAccess<?> access) {
    JavaClass origin = access.getOriginOwner();
    boolean writes =
        isIn(base, origin, "record") || isIn(base, origin, "recorder") || isIn(base, origin, "lab");
    return !writes
        && access.getTarget().getName().equals("interrupt")
        && access.getOrigin().getMethodCallsFromSelf().stream()
            .anyMatch(call -> call.getName().equals("currentThread"));
  }

  private static boolean sleeps(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    return access.getTarget().getName().equals("sleep")
        && (owner.isAssignableTo(Thread.class)
            || owner.isEquivalentTo(java.util.concurrent.TimeUnit.class));
  }

  private static void floors(String base, JavaClass item, ConditionEvents events) {
    String own = floor(base, item.getPackageName());
    if (!FLOORS.contains(own)) {
      events.add(
          SimpleConditionEvent.violated(item, item.getFullName() + " is in no known package"));
      return;
    }
    for (Dependency dependency : item.getDirectDependenciesFromSelf()) {
      String target = dependency.getTargetClass().getBaseComponentType().getPackageName();
      if (target.startsWith(base + ".")
          && FLOORS.indexOf(floor(base, target)) > FLOORS.indexOf(own)) {
        events.add(SimpleConditionEvent.violated(dependency, dependency.getDescription()));
      }
    }
  }

  private static String floor(String base, String packageName) {
    String rest =
        packageName.startsWith(base + ".") ? packageName.substring(base.length() + 1) : "";
    return rest.contains(".") ? rest.substring(0, rest.indexOf('.')) : rest;
  }

  private static boolean isIn(String base, JavaClass item, String... floors) {
    return List.of(floors).contains(floor(base, item.getPackageName()));
  }

  private static void nullMarked(JavaClass item, ConditionEvents events) {
    boolean marked =
        item.getPackage()
            .tryGetPackageInfo()
            .filter(info -> info.isAnnotatedWith(NullMarked.class))
            .isPresent();
    if (!marked) {
      events.add(
          SimpleConditionEvent.violated(
              item, item.getFullName() + " lives in a package that is not null-marked"));
    }
  }

  private static void closed(JavaClass item, ConditionEvents events) {
    boolean open =
        item.isTopLevelClass()
            && item.getModifiers().contains(JavaModifier.PUBLIC)
            && !item.getModifiers().contains(JavaModifier.FINAL)
            && !item.getModifiers().contains(JavaModifier.ABSTRACT)
            && !item.isInterface()
            && !item.isEnum();
    if (open) {
      events.add(SimpleConditionEvent.violated(item, item.getFullName() + " is open"));
    }
  }
}
