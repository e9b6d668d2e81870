package io.github.platenwire;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;

/**
 * A small class that breaks a rule of the house, or comes close to it, as Java source.
 *
 * @param rule the rule that looks at it
 * @param bites whether that rule must find it wrong
 */
record WrongClass(String rule, String name, boolean bites, String body) {
  String source() {
    int dot = name.lastIndexOf('.');
    return "package "
        + name.substring(0, dot)
        + ";\npublic "
        + (rule.equals("final") && bites ? "class " : "final class ")
        + name.substring(dot + 1)
        + " {\n"
        + body
        + "\n}\n";
  }

  private static WrongClass bad(String rule, String name, String body) {
    return new WrongClass(rule, "wrong." + name, /* bites= */ true, body);
  }

  private static WrongClass good(String rule, String name, String body) {
    return new WrongClass(rule, "wrong." + name, /* bites= */ false, body);
  }

  static final List<WrongClass> ALL =
      List.of(
          bad("floors", "quantity.Climbs", "wrong.cli.Zone top;"),
          bad("floors", "live.ClimbsByArray", "wrong.lab.Goes[] above;"),
          bad("floors", "attic.Unknown", ""),
          good("floors", "cli.Top", "wrong.quantity.Marked below;"),
          good("floors", "recorder.Middle", "wrong.reading.SystemClocks below;"),
          bad("cycles", "lab.Goes", "wrong.study.Returns a;"),
          bad("cycles", "study.Returns", "wrong.lab.Goes a;"),
          good("cycles", "port.Shut", ""),
          bad("null", "attic.Bare", ""),
          good("null", "quantity.Marked", ""),
          bad("final", "port.Open", ""),
          good("final", "port.Closed", ""),
          bad("clock", "port.Nanos", "long a = System.nanoTime();"),
          bad("clock", "port.Reference", "java.util.function.LongSupplier a = System::nanoTime;"),
          bad(
              "clock",
              "port.Today",
              "Object a = java.time.LocalDate.now(java.time.ZoneOffset.UTC);"),
          bad("clock", "port.UtcClock", "Object a = java.time.Clock.systemUTC();"),
          bad("clock", "port.OldDate", "Object a = new java.util.Date();"),
          good("clock", "reading.SystemClocks", "long a = System.nanoTime();"),
          bad("charset", "port.Bytes", "byte[] a = \"\".getBytes();"),
          bad("charset", "port.Text", "String a = new String(new byte[0]);"),
          bad("charset", "port.Reads", "Object a = new java.io.InputStreamReader(System.in);"),
          bad(
              "charset",
              "port.File",
              "Object a() throws Exception { return new java.io.FileWriter(\"a\", true); }"),
          bad("charset", "port.Default", "Object a = java.nio.charset.Charset.defaultCharset();"),
          good(
              "charset",
              "port.Utf8",
              "byte[] a = \"\".getBytes(java.nio.charset.StandardCharsets.UTF_8);"
                  + "String b = new String(a, java.nio.charset.StandardCharsets.UTF_8);"),
          bad("locale", "port.Format", "String a = String.format(\"%.1f\", 1.0);"),
          bad("locale", "port.Formatted", "String a = \"%.1f\".formatted(1.0);"),
          bad("locale", "port.Lower", "String a = \"I\".toLowerCase();"),
          bad(
              "locale",
              "port.Upper",
              "java.util.function.UnaryOperator<String> a = String::toUpperCase;"),
          bad("locale", "port.Decimal", "Object a = new java.text.DecimalFormat(\"0.0\");"),
          bad(
              "locale",
              "port.Dated",
              "Object a = java.time.format.DateTimeFormatter.ofPattern(\"MMM\");"),
          good(
              "locale",
              "port.Root",
              "String a = String.format(java.util.Locale.ROOT, \"%.1f\", 1.0).toLowerCase(java.util.Locale.ROOT);"),
          bad("zone", "port.Zone", "Object a = java.time.ZoneId.systemDefault();"),
          good("zone", "cli.Zone", "Object a = java.time.ZoneId.systemDefault();"),
          bad("console", "window.Prints", "void a() { System.out.println(); }"),
          bad("console", "port.Traces", "void a() { new Exception().printStackTrace(); }"),
          good("console", "terminal.Prints", "void a() { System.err.println(); }"),
          bad("interrupt", "record.Interrupts", "void a() { Thread.currentThread().interrupt(); }"),
          good("interrupt", "port.Interrupts", "void a() { Thread.currentThread().interrupt(); }"),
          bad(
              "interrupt",
              "port.Ends",
              "void a(java.util.concurrent.ScheduledExecutorService s) { s.shutdownNow(); }"),
          bad(
              "interrupt",
              "port.Cancels",
              "void a(java.util.concurrent.CompletableFuture<String> f) { f.cancel(false); }"),
          good("interrupt", "port.Timer", "void a(java.util.Timer t) { t.cancel(); }"),
          bad("sleep", "port.Sleeps", "void a() throws Exception { Thread.sleep(1); }"),
          bad(
              "sleep",
              "port.SleepsByUnit",
              "void a() throws Exception { java.util.concurrent.TimeUnit.SECONDS.sleep(1); }"),
          good("sleep", "port.Waits", "void a() throws Exception { new Object().wait(1); }"));

  /** Compiles all of them, and the package-info of the one null-marked package. */
  static JavaClasses compile(Path folder) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("-proc:none", "-nowarn", "-cp"));
    arguments.add(System.getProperty("java.class.path"));
    arguments.addAll(List.of("-d", Files.createDirectory(folder.resolve("classes")).toString()));
    for (WrongClass sample : ALL) {
      Path file = folder.resolve(sample.name.replace('.', '/') + ".java");
      Files.createDirectories(file.getParent());
      Files.writeString(file, sample.source());
      arguments.add(file.toString());
    }
    Path marked = folder.resolve("wrong/quantity/package-info.java");
    Files.writeString(marked, "@org.jspecify.annotations.NullMarked package wrong.quantity;");
    arguments.add(marked.toString());
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    int failed = compiler.run(null, null, null, arguments.toArray(String[]::new));
    assertThat(failed).isZero();
    return new ClassFileImporter().importPath(folder.resolve("classes"));
  }
}
