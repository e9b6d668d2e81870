package io.github.platenwire.lab;

import io.github.platenwire.lab.RegisterLine.Kind;
import io.github.platenwire.reading.WallClock;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * One rig's register with the key to write in it: {@code register/RIG.jsonl}, a line a closed test,
 * each tied to the one before it and signed. Confined to one thread; other processes are kept out
 * while it is written.
 */
public final class Register {
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(5);
  private static final long POLL_NANOS = TimeUnit.MILLISECONDS.toNanos(20);

  private final LabFolder lab;
  private final String rig;
  private final RigKey key;
  private final WallClock clock;

  private Register(LabFolder lab, String rig, RigKey key, WallClock clock) {
    this.lab = lab;
    this.rig = rig;
    this.key = key;
    this.clock = clock;
  }

  /**
   * Opens a rig's register for writing. A rig that has no key yet is given one.
   *
   * @param lab the lab folder
   * @param rig the rig's name
   * @param keys the private keys of this machine
   * @param clock tells the time of day
   * @throws LabException if the rig has a key, but its private part is not on this machine; the
   *     message says how to get on
   * @throws IOException if a key cannot be read or kept
   */
  public static Register open(LabFolder lab, String rig, PrivateKeys keys, WallClock clock)
      throws LabException, IOException {
    PublicKeys known = new PublicKeys(lab.keysFolder(), rig);
    Map<String, String> all = known.all();
    if (all.isEmpty()) {
      return new Register(lab, rig, first(lab, rig, keys, known), clock);
    }
    String newest = List.copyOf(all.keySet()).get(all.size() - 1);
    Optional<RigKey> key = keys.find(newest, all.getOrDefault(newest, ""));
    if (key.isEmpty()) {
      throw new LabException(
          "this machine does not hold the private key of rig '"
              + rig
              + "' (it would be in "
              + keys.folder()
              + "); tests recorded here could not be signed. If the rig has moved to this machine,"
              + " give it a new key: platenwire init "
              + lab.root()
              + " --new-key "
              + rig
              + "  (lines signed so far stay valid). Otherwise bring the old key's file from the"
              + " other machine");
    }
    return new Register(lab, rig, key.get(), clock);
  }

  private static RigKey first(LabFolder lab, String rig, PrivateKeys keys, PublicKeys known)
      throws LabException, IOException {
    if (!RegisterFile.wholeLines(file(lab, rig)).isEmpty()) {
      throw new LabException(
          "the register of rig '"
              + rig
              + "' has lines, but its public key "
              + known.file(rig)
              + " is gone; put back a copy of it, such as from a backup");
    }
    RigKey key = keys.make(rig);
    known.add(rig, key.publicHex());
    return key;
  }

  /**
   * Gives a rig a new key, for a machine that has not the old one, and says so in the register.
   *
   * @return the register, which writes with the new key
   * @throws LabException if the rig's keys cannot be used
   * @throws IOException if something cannot be written
   */
  public static Register enrol(LabFolder lab, String rig, PrivateKeys keys, WallClock clock)
      throws LabException, IOException {
    PublicKeys known = new PublicKeys(lab.keysFolder(), rig);
    if (known.all().isEmpty()) {
      return open(lab, rig, keys, clock);
    }
    RigKey key = keys.make(known.nextName());
    known.add(key.name(), key.publicHex());
    Register register = new Register(lab, rig, key, clock);
    try (Entry entry = register.begin()) {
      entry.append(Kind.KEY, key.name(), "", "");
    }
    return register;
  }

  /** The rig's name. */
  public String rig() {
    return rig;
  }

  /** The short name of the key that it writes with. */
  public String fingerprint() {
    return PrivateKeys.fingerprint(key.publicHex());
  }

  /** The file of a rig's register. */
  public static Path file(LabFolder lab, String rig) {
    return lab.registerFolder().resolve(rig + ".jsonl");
  }

  /**
   * The ids of all tests that stand in any register of a lab, whether or not its chain holds.
   *
   * @throws IOException if a register cannot be read
   */
  public static Set<String> registeredTests(LabFolder lab) throws IOException {
    Set<String> tests = new HashSet<>();
    for (String name : lab.registerNames()) {
      for (String text : RegisterFile.wholeLines(file(lab, name))) {
        RegisterLine.parse(text)
            .filter(line -> line.kind() != Kind.KEY)
            .ifPresent(line -> tests.add(line.test()));
      }
    }
    return tests;
  }

  /**
   * Begins to write one line: keeps other processes out until it is closed.
   *
   * @throws LabException if another process keeps the register for longer than five seconds, or its
   *     last line is none
   * @throws IOException if it cannot be read
   */
  public Entry begin() throws LabException, IOException {
    Path lockFile = lab.registerFolder().resolve("." + rig + ".lock");
    for (long waited = 0; ; waited += POLL_NANOS) {
      Optional<FileMutex> mutex = FileMutex.tryTake(lockFile);
      if (mutex.isPresent()) {
        return entry(mutex.get());
      }
      if (waited >= PATIENCE_NANOS) {
        throw new LabException(
            file(lab, rig)
                + ": another process has been writing it for more than 5 s; look for it");
      }
      // Nobody tells when another process lets go: looking again is all there is.
      LockSupport.parkNanos(this, POLL_NANOS);
    }
  }

  private Entry entry(FileMutex mutex) throws LabException, IOException {
    try {
      List<String> lines = RegisterFile.wholeLines(file(lab, rig));
      if (lines.isEmpty()) {
        return new Entry(mutex, 1, RegisterLine.NO_LINE);
      }
      RegisterLine last =
          RegisterLine.parse(lines.get(lines.size() - 1))
              .orElseThrow(
                  () ->
                      new LabException(
                          file(lab, rig)
                              + ":"
                              + lines.size()
                              + ": this is no register line; somebody changed the file. Put back"
                              + " the copy from the shared register or a backup"));
      return new Entry(mutex, last.number() + 1, last.sha256());
    } catch (LabException | IOException | RuntimeException e) {
      mutex.close();
      throw e;
    }
  }

  /** A line about to be written. */
  public final class Entry implements AutoCloseable {
    private final FileMutex mutex;
    private final long number;
    private final String previous;

    private Entry(FileMutex mutex, long number, String previous) {
      this.mutex = mutex;
      this.number = number;
      this.previous = previous;
    }

    /** The rig's name. */
    public String rig() {
      return rig;
    }

    /** The witness of the line before; 16 zeros if there is none. */
    public String witnessBefore() {
      return previous.substring(0, RegisterLine.WITNESS_DIGITS);
    }

    /**
     * Signs and writes the line, and forces it to the disk.
     *
     * @throws IOException if it cannot be written; what was written of it is no whole line then, or
     *     is the line
     */
    public RegisterLine append(Kind kind, String test, String rawSha256, String summarySha256)
        throws IOException {
      var now = clock.now();
      String unsigned =
          RegisterLine.unsigned(
              rig, number, now, kind, test, rawSha256, summarySha256, previous, key.publicHex());
      RegisterLine line =
          new RegisterLine(
              rig,
              number,
              now,
              kind,
              test,
              rawSha256,
              summarySha256,
              previous,
              key.publicHex(),
              key.sign(unsigned.getBytes(StandardCharsets.UTF_8)));
      RegisterFile.append(file(lab, rig), List.of(line.text()));
      return line;
    }

    /** Lets others write again. */
    @Override
    public void close() throws IOException {
      mutex.close();
    }
  }
}
