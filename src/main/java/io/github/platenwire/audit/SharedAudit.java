package io.github.platenwire.audit;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Holds the lab's registers against the copies in the shared folder, if the lab has one. A folder
 * that does not answer is waited for five seconds, like when a test is closed.
 */
final class SharedAudit {
  private static final long PATIENCE_SECONDS = 5;

  private final AuditContext context;
  private final Path shared;

  private SharedAudit(AuditContext context, Path shared) {
    this.context = context;
    this.shared = shared;
  }

  /** What differs; empty if the lab has no shared register. */
  static List<Finding> of(AuditContext context) throws InterruptedException {
    if (context.lab().settings().sharedRegister().isEmpty()) {
      return List.of();
    }
    Path shared = context.lab().root().resolve(context.lab().settings().sharedRegister().get());
    SharedAudit audit = new SharedAudit(context, shared);
    CompletableFuture<List<Finding>> found = new CompletableFuture<>();
    Thread thread = new Thread(() -> found.complete(audit.run()), "platenwire-shared-audit");
    thread.setDaemon(true);
    thread.start();
    try {
      return found.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException | ExecutionException e) {
      return audit.unreachable("it does not answer");
    }
  }

  private List<Finding> unreachable(String why) {
    Findings findings = new Findings();
    findings.add(
        RegisterLineCheck.SHARED_UNREACHABLE,
        Location.of("lab.toml"),
        "the shared register " + shared,
        why);
    return findings.list();
  }

  private List<Finding> run() {
    if (!Files.isDirectory(shared)) {
      return unreachable("there is no such folder");
    }
    Findings findings = new Findings();
    try {
      Set<String> rigs = new TreeSet<>(context.lab().registerNames());
      rigs.addAll(context.lab().rigNames());
      for (String rig : rigs) {
        lines(rig, findings);
        keys(rig, findings);
      }
      return findings.list();
    } catch (IOException | LabException | RuntimeException e) {
      return unreachable(String.valueOf(e.getMessage()));
    }
  }

  private void lines(String rig, Findings findings) throws IOException {
    Path copy = shared.resolve(rig + ".jsonl");
    List<String> own = RegisterCheck.texts(Register.file(context.lab(), rig));
    List<String> theirs = RegisterCheck.texts(copy);
    int common = Math.min(own.size(), theirs.size());
    String file = context.relative(Register.file(context.lab(), rig));
    for (int i = 0; i < common; i++) {
      if (!own.get(i).equals(theirs.get(i))) {
        findings.add(
            RegisterLineCheck.SHARED_DIFFERS,
            Location.of(file, i + 1L),
            "the same line as in " + context.relative(copy),
            "another line");
        return;
      }
    }
    if (theirs.size() > own.size()) {
      findings.add(
          RegisterLineCheck.SHARED_AHEAD,
          Location.of(file, own.size() + 1L),
          theirs.size() + " lines, as in " + context.relative(copy),
          own.size() + " lines");
    } else if (own.size() > theirs.size()) {
      findings.add(
          RegisterLineCheck.SHARED_BEHIND,
          Location.of(context.relative(copy)),
          own.size() + " lines, as in " + file,
          theirs.size() + " lines");
    }
  }

  private void keys(String rig, Findings findings) throws LabException {
    Map<String, String> own = RegisterCheck.keys(context.lab().keysFolder(), rig);
    RegisterCheck.keys(shared, rig)
        .forEach(
            (name, key) -> {
              if (!key.equals(own.get(name))) {
                findings.add(
                    RegisterLineCheck.SHARED_DIFFERS,
                    Location.of("keys/" + name + ".pub"),
                    "the same key as in " + context.relative(shared.resolve(name + ".pub")),
                    own.containsKey(name) ? "another key" : "no such file");
              }
            });
  }
}
