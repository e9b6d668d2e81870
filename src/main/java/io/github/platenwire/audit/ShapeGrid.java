package io.github.platenwire.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the outlines that lie near each other without comparing each with each: outlines are put
 * into cells by three averages of theirs, and only neighbouring cells are looked at. For outlines
 * that are spread out the work grows with their number, not with its square. Not thread-safe.
 */
final class ShapeGrid {
  private static final int AVERAGES = 3;

  private final Map<List<Integer>, List<Integer>> cells = new HashMap<>();
  private final List<TraceShape> shapes;
  private final double width;
  private long lookedAt;

  ShapeGrid(List<TraceShape> shapes) {
    this.shapes = shapes;
    double widest = 1e-6;
    for (TraceShape shape : shapes) {
      widest = Math.max(widest, TwinTest.nearness(shape, shape));
    }
    // The mean of a third of the points differs by no more than the root of three times the
    // root mean square of all differences.
    width = widest * Math.sqrt(AVERAGES);
    for (int i = 0; i < shapes.size(); i++) {
      cells.computeIfAbsent(cell(shapes.get(i)), none -> new ArrayList<>()).add(i);
    }
  }

  /** Two outlines that are near each other, by their numbers in the list, the lower first. */
  record Pair(int first, int second) {}

  /** All pairs that are near, each once. */
  List<Pair> pairs() {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < shapes.size(); i++) {
      List<Integer> cell = cell(shapes.get(i));
      for (int neighbour = 0; neighbour < 27; neighbour++) {
        List<Integer> beside =
            List.of(
                cell.get(0) + neighbour % 3 - 1,
                cell.get(1) + neighbour / 3 % 3 - 1,
                cell.get(2) + neighbour / 9 - 1);
        for (int other : cells.getOrDefault(beside, List.of())) {
          lookedAt += other > i ? 1 : 0;
          if (other > i && TwinTest.areNear(shapes.get(i), shapes.get(other))) {
            pairs.add(new Pair(i, other));
          }
        }
      }
    }
    return pairs;
  }

  /** How many pairs had to be looked at. */
  long lookedAt() {
    return lookedAt;
  }

  private List<Integer> cell(TraceShape shape) {
    int[] cell = new int[AVERAGES];
    int third = TraceShape.POINTS / AVERAGES;
    for (int average = 0; average < AVERAGES; average++) {
      double sum = 0;
      for (int point = average * third; point < (average + 1) * third; point++) {
        sum += shape.share(point);
      }
      cell[average] = (int) Math.floor(sum / third / width);
    }
    return List.of(cell[0], cell[1], cell[2]);
  }
}
