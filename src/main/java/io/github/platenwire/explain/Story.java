package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;

/** Tells where figures of one kind come from. Used once for one figure. */
interface Story {
  /** Whether it knows a figure's way. */
  boolean tells(Figure figure);

  /** Tells it, from the bytes up to the exact value, one step after another. */
  void tell(Figure figure, Telling telling);
}
