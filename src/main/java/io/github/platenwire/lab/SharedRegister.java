package io.github.platenwire.lab;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Joins a rig's register to the copy in the lab's shared folder, {@code shared-register} in {@code
 * lab.toml}: whatever lines the copy lacks are appended to it, and the public keys with them. The
 * copy is never changed otherwise. A folder that cannot be reached, or does not answer, holds up
 * nothing: the lines wait for the next time. Stateless.
 */
public final class SharedRegister {
  private static final Logger LOG = LoggerFactory.getLogger(SharedRegister.class);
  private static final long PATIENCE_SECONDS = 5;

  private SharedRegister() {}

  /**
   * Joins the register of a rig.
   *
   * @return what a person has to know of it; empty if the lab has no shared register, or all went
   *     well
   */
  public static Optional<String> join(LabFolder lab, String rig) {
    Optional<String> place = lab.settings().sharedRegister();
    if (place.isEmpty()) {
      return Optional.empty();
    }
    Path shared = lab.root().resolve(place.get());
    CompletableFuture<Optional<String>> joined = new CompletableFuture<>();
    Thread thread =
        new Thread(() -> joined.complete(joinNow(lab, rig, shared)), "platenwire-shared-register");
    thread.setDaemon(true);
    thread.start();
    try {
      return joined.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      return Optional.of(waits(shared, "it does not answer"));
    } catch (InterruptedException | ExecutionException e) {
      LOG.warn("the shared register {} was not waited for", shared, e);
      return Optional.of(waits(shared, "the wait was cut short"));
    }
  }

  private static String waits(Path shared, String why) {
    return "The shared register "
        + shared
        + " could not be reached ("
        + why
        + "). Everything is closed and signed in this lab folder; its lines will be joined to the"
        + " shared register at the next close.";
  }

  private static Optional<String> joinNow(LabFolder lab, String rig, Path shared) {
    try {
      if (!Files.isDirectory(shared)) {
        return Optional.of(waits(shared, "there is no such folder"));
      }
      return append(lab, rig, shared);
    } catch (IOException | LabException | RuntimeException e) {
      LOG.warn("the register of {} could not be joined to {}", rig, shared, e);
      return Optional.of(waits(shared, String.valueOf(e.getMessage())));
    }
  }

  private static Optional<String> append(LabFolder lab, String rig, Path shared)
      throws IOException, LabException {
    Path copy = shared.resolve(rig + ".jsonl");
    Optional<FileMutex> mutex = FileMutex.tryTake(shared.resolve("." + rig + ".lock"));
    if (mutex.isEmpty()) {
      return Optional.of(waits(shared, "another process is joining the same register"));
    }
    try (FileMutex held = mutex.get()) {
      List<String> own = RegisterFile.wholeLines(Register.file(lab, rig));
      List<String> theirs = RegisterFile.wholeLines(copy);
      if (theirs.size() > own.size() || !own.subList(0, theirs.size()).equals(theirs)) {
        return Optional.of(
            "The shared register "
                + copy
                + " is not the same as this lab's "
                + Register.file(lab, rig)
                + ": one of the two was changed, or two machines write for one rig. Nothing was"
                + " joined; compare the two line by line.");
      }
      if (theirs.size() < own.size()) {
        RegisterFile.append(copy, own.subList(theirs.size(), own.size()));
      }
      keys(lab, rig, shared);
      return Optional.empty();
    }
  }

  private static void keys(LabFolder lab, String rig, Path shared)
      throws IOException, LabException {
    PublicKeys copies = new PublicKeys(shared, rig);
    for (Map.Entry<String, String> key : new PublicKeys(lab.keysFolder(), rig).all().entrySet()) {
      if (!Files.exists(copies.file(key.getKey()))) {
        try {
          copies.add(key.getKey(), key.getValue());
        } catch (FileAlreadyExistsException e) {
          LOG.debug("{} was put there meanwhile", copies.file(key.getKey()));
        }
      }
    }
  }
}
