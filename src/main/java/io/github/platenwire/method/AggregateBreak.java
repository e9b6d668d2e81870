package io.github.platenwire.method;

/** Which way a break went about the coarse aggregate, as the operator saw it. */
public enum AggregateBreak {
  /** The stones themselves are broken. */
  THROUGH("through", "through the aggregate: most stones in the break are split"),
  /** The break follows the surfaces of the stones. */
  AROUND("around", "around the aggregate: most stones in the break came out whole"),
  /** Some of each. */
  MIXED("mixed", "mixed: some stones split, some came out whole"),
  /** Nobody looked, or it could not be told. */
  NOT_SEEN("not-seen", "not looked at, or not to be told");

  private final String key;
  private final String words;

  AggregateBreak(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** The word in files and answers. */
  public String key() {
    return key;
  }

  /** For a person. */
  public String words() {
    return words;
  }
}
