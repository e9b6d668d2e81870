package io.github.platenwire.faults;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a disk really keeps of a folder: a file's bytes as they were when the file was last forced,
 * a name only once its folder was forced. Counts every step that changes something, and can fail at
 * one of them. Safe for any thread.
 */
final class DiskModel {
  /** What is done to a disk, as far as it can fail. */
  enum Step {
    CREATE,
    WRITE,
    FORCE,
    TRUNCATE,
    MOVE,
    DELETE
  }

  /** One file or folder, whatever its name is at the moment. */
  private static final class Node {
    private byte[] durableBytes = {};
    private Map<String, Node> durableNames = Map.of();
    private final boolean isFolder;

    Node(boolean isFolder) {
      this.isFolder = isFolder;
    }
  }

  private final Path root;
  private final Map<Path, Node> live = new HashMap<>();
  private final List<String> steps = new ArrayList<>();
  private int failAt = Integer.MAX_VALUE;
  private boolean forEver;
  private String failure = "";
  private @Nullable Path cuts;
  private @Nullable Death death;

  DiskModel(Path root) {
    this.root = root;
  }

  /** Fails at the n-th step from now on, from 1; once, or at every step from there. */
  synchronized void failAt(int step, boolean everyLaterStepToo, String words) {
    steps.clear();
    failAt = step;
    forEver = everyLaterStepToo;
    failure = words;
  }

  /** Ends the process at a step. */
  synchronized void dieAt(Death newDeath) {
    death = newDeath;
  }

  /** How many bytes of a write go through before the process ends; -1 if it goes on. */
  synchronized int bytesBeforeDeath(Path file, ByteBuffer bytes) {
    return death == null ? -1 : death.through(file, bytes);
  }

  /** A step other than a write is done. */
  synchronized void done(Step step, Path file) throws IOException {
    if (death != null && death.isAfter(step, file)) {
      Death.now();
    }
  }

  /** Fails no more. */
  synchronized void heal() {
    failAt = Integer.MAX_VALUE;
  }

  /** Steps since the last {@link #failAt}. */
  synchronized List<String> steps() {
    return List.copyOf(steps);
  }

  /** From now on writes what a power cut before each step would leave into a folder each. */
  synchronized void cutBeforeEachStepInto(Path folder) {
    steps.clear();
    cuts = folder;
  }

  /** Counts a step and fails, if it is the one. */
  synchronized void step(Step step, Path file) throws IOException {
    steps.add(step + " " + file.getFileName());
    if (cuts != null) {
      cutPowerInto(cuts.resolve(String.valueOf(steps.size())));
    }
    if (steps.size() == failAt || (forEver && steps.size() > failAt)) {
      throw new IOException(failure);
    }
  }

  /** Takes everything that is there now as kept. */
  synchronized void settle() throws IOException {
    live.clear();
    List<Path> all;
    try (Stream<Path> files = Files.walk(root)) {
      all = files.toList();
    }
    for (Path path : all) {
      live.put(path, new Node(Files.isDirectory(path)));
    }
    for (Path path : all) {
      forced(path);
    }
  }

  synchronized void created(Path path) {
    live.putIfAbsent(path, new Node(Files.isDirectory(path)));
  }

  synchronized void moved(Path from, Path to) {
    Node node = live.remove(from);
    if (node != null) {
      live.put(to, node);
    }
  }

  synchronized void deleted(Path path) {
    live.remove(path);
  }

  /** The disk has confirmed a file's bytes, or a folder's names. */
  synchronized void forced(Path path) throws IOException {
    Node node = live.get(path);
    if (node == null) {
      return;
    }
    if (node.isFolder) {
      Map<String, Node> names = new HashMap<>();
      live.forEach(
          (child, entry) -> {
            if (path.equals(child.getParent())) {
              names.put(String.valueOf(child.getFileName()), entry);
            }
          });
      node.durableNames = names;
    } else {
      node.durableBytes = Files.readAllBytes(path);
    }
  }

  /** How many bytes of a file would be there after a power cut; empty if not even its name. */
  synchronized Optional<Integer> durableLength(Path path) {
    Node node = live.get(root);
    for (Path part : root.relativize(path)) {
      node = node == null ? null : node.durableNames.get(part.toString());
    }
    return Optional.ofNullable(node).map(there -> there.durableBytes.length);
  }

  /** Writes what is there after a power cut at this moment into a new folder. */
  synchronized void cutPowerInto(Path folder) throws IOException {
    write(live.get(root), folder, new HashSet<>());
  }

  private static void write(@Nullable Node node, Path path, Set<Node> above) throws IOException {
    if (node == null || !above.add(node)) {
      throw new IOException("the model of the disk is broken at " + path);
    }
    if (!node.isFolder) {
      Files.write(path, node.durableBytes);
      return;
    }
    Files.createDirectories(path);
    for (Map.Entry<String, Node> name : node.durableNames.entrySet()) {
      write(name.getValue(), path.resolve(name.getKey()), new HashSet<>(above));
    }
  }
}
