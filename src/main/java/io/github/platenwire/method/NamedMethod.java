package io.github.platenwire.method;

import java.util.List;

/** What every method does alike: it has a name, a text, and starts no test that it refuses. */
abstract class NamedMethod implements Method {
  private final String name;
  private final String title;
  private final String standard;
  private final String text;

  NamedMethod(String name, String title, String standard, String text) {
    this.name = name;
    this.title = title;
    this.standard = standard;
    this.text = text;
  }

  @Override
  public final String name() {
    return name;
  }

  @Override
  public final String title() {
    return title;
  }

  @Override
  public final String standard() {
    return standard;
  }

  @Override
  public final String text() {
    return text;
  }

  @Override
  public final MethodRun start(Specimen specimen, TestSetting setting) {
    return run(specimen, setting, Method.unlessRefused(specimen, examine(specimen, setting)));
  }

  /** The run of a specimen that is not refused. */
  abstract MethodRun run(Specimen specimen, TestSetting setting, List<Objection> objections);
}
