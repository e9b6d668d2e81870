package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.lab.RegisterLine.Kind;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.Digests;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RegisterTest {
  private static final String RIG = "frame-1";

  @TempDir Path folder;
  private LabFolder lab;
  private PrivateKeys keys;
  private Register register;

  @BeforeEach
  void makeLab() throws Exception {
    lab =
        LabFolder.create(
            folder.resolve("lab"),
            LabTemplate.example("Weir lab", ZoneId.of("UTC"), UnitSystem.SI));
    keys = new PrivateKeys(folder.resolve("keys"));
    register = open(keys);
  }

  private Register open(PrivateKeys of) throws Exception {
    return Register.open(lab, RIG, of, () -> Instant.parse("2026-11-25T07:15:02.5Z"));
  }

  private RegisterLine append(Register to, int test) throws Exception {
    try (Register.Entry entry = to.begin()) {
      return entry.append(Kind.CLOSE, "test-" + test, digest("raw" + test), digest("sum" + test));
    }
  }

  private void fill(int lines) throws Exception {
    for (int i = 1; i <= lines; i++) {
      append(register, i);
    }
  }

  private static String digest(String text) {
    return Digests.sha256Hex(text.getBytes(StandardCharsets.UTF_8));
  }

  private Path file() {
    return Register.file(lab, RIG);
  }

  private RegisterCheck check() throws Exception {
    return RegisterCheck.of(lab, RIG);
  }

  @Test
  void append_fiveTests_isAChainThatHolds() throws Exception {
    List<String> witnesses = new ArrayList<>();
    for (int i = 1; i <= 5; i++) {
      try (Register.Entry entry = register.begin()) {
        assertThat(entry.witnessBefore()).isEqualTo(i == 1 ? "0".repeat(16) : witnesses.get(i - 2));
      }
      witnesses.add(append(register, i).witness());
    }
    RegisterCheck check = check();
    assertThat(check.findings()).isEmpty();
    assertThat(check.lines()).extracting(RegisterLine::number).containsExactly(1L, 2L, 3L, 4L, 5L);
    assertThat(check.head()).contains(witnesses.get(4));
    assertThat(witnesses).allMatch(check::knowsWitness);
    assertThat(Register.registeredTests(lab))
        .containsExactlyInAnyOrder("test-1", "test-2", "test-3", "test-4", "test-5");
  }

  /** The recipe of the format's description, by hand and without the program's own parser. */
  @Test
  void line_byTheRecipeForStrangers_holds() throws Exception {
    fill(2);
    List<String> lines = Files.readAllLines(file());
    String line = lines.get(1);
    int cut = line.indexOf(",\"signature\":\"");
    byte[] signed = line.substring(0, cut).getBytes(StandardCharsets.UTF_8);
    String signature = line.substring(cut + ",\"signature\":\"".length(), line.length() - 2);
    byte[] encoded =
        java.util.Base64.getMimeDecoder()
            .decode(
                Files.readString(lab.keysFolder().resolve(RIG + ".pub"))
                    .replaceAll("-----[A-Z ]+-----", ""));
    java.security.Signature verifier = java.security.Signature.getInstance("Ed25519");
    verifier.initVerify(
        java.security.KeyFactory.getInstance("Ed25519")
            .generatePublic(new java.security.spec.X509EncodedKeySpec(encoded)));
    verifier.update(signed);
    assertThat(verifier.verify(java.util.HexFormat.of().parseHex(signature))).isTrue();
    assertThat(line).contains("\"previous\":\"" + digest(lines.get(0)) + "\"");
  }

  @Test
  void check_anyBitFlipped_isFound() throws Exception {
    fill(2);
    byte[] good = Files.readAllBytes(file());
    for (int i = 0; i < good.length; i++) {
      byte[] bad = good.clone();
      bad[i] ^= (byte) (1 << (i % 8));
      Files.write(file(), bad);
      assertThat(check().findings()).as("byte " + i).isNotEmpty();
    }
  }

  @Test
  void check_lineRemovedAddedOrSwapped_isFound() throws Exception {
    fill(4);
    List<String> good = Files.readAllLines(file());
    for (int i = 0; i < 3; i++) {
      List<String> removed = new ArrayList<>(good);
      removed.remove(i);
      write(removed);
      assertThat(check().findings()).as("line " + i + " removed").isNotEmpty();
      List<String> swapped = new ArrayList<>(good);
      Collections.swap(swapped, i, i + 1);
      write(swapped);
      assertThat(check().findings()).as("line " + i + " swapped").isNotEmpty();
      List<String> doubled = new ArrayList<>(good);
      doubled.add(i, good.get(i));
      write(doubled);
      assertThat(check().findings()).as("line " + i + " doubled").isNotEmpty();
    }
  }

  @Test
  void check_endCutOff_showsAgainstAWitnessOnPaper() throws Exception {
    fill(4);
    String paper = check().head().orElseThrow();
    write(Files.readAllLines(file()).subList(0, 3));
    assertThat(check().findings()).isEmpty();
    assertThat(check().knowsWitness(paper)).isFalse();
  }

  @Test
  void check_signedAgainWithAnotherKey_isFound() throws Exception {
    fill(3);
    Path other = folder.resolve("other");
    LabFolder forged =
        LabFolder.create(other, LabTemplate.example("x", ZoneId.of("UTC"), UnitSystem.SI));
    Register forger =
        Register.open(forged, RIG, new PrivateKeys(folder.resolve("forger")), () -> Instant.EPOCH);
    for (int i = 1; i <= 3; i++) {
      append(forger, i + 10);
    }
    Files.write(file(), Files.readAllBytes(Register.file(forged, RIG)));
    assertThat(check().findings()).hasSizeGreaterThanOrEqualTo(3);
    assertThat(check().findings().get(0).words()).contains("not the rig's");
  }

  @Test
  void check_lastLineOnlySignedByAStranger_isFound() throws Exception {
    fill(2);
    RegisterLine last = check().lines().get(1);
    RigKey stranger = new PrivateKeys(folder.resolve("stranger")).make("stranger");
    for (String key : List.of(last.publicKey(), stranger.publicHex())) {
      RegisterLine unsigned =
          new RegisterLine(
              RIG,
              2,
              last.time(),
              Kind.CLOSE,
              "test-2",
              digest("x"),
              digest("y"),
              last.previousSha256(),
              key,
              "");
      RegisterLine forged =
          new RegisterLine(
              RIG,
              2,
              last.time(),
              Kind.CLOSE,
              "test-2",
              digest("x"),
              digest("y"),
              last.previousSha256(),
              key,
              stranger.sign(unsigned.signedBytes()));
      write(List.of(Files.readAllLines(file()).get(0), forged.text()));
      assertThat(check().findings()).isNotEmpty();
    }
  }

  private void write(List<String> lines) throws Exception {
    Files.writeString(file(), String.join("\n", lines) + "\n");
  }

  @Test
  void open_labOnAnotherMachine_saysHowToGetOn() throws Exception {
    fill(1);
    PrivateKeys elsewhere = new PrivateKeys(folder.resolve("elsewhere"));
    assertThatThrownBy(() -> open(elsewhere))
        .isInstanceOf(LabException.class)
        .hasMessageContaining("--new-key frame-1")
        .hasMessageContaining(elsewhere.folder().toString());
  }

  @Test
  void enrol_onAnotherMachine_oldLinesStayValid() throws Exception {
    fill(2);
    PrivateKeys elsewhere = new PrivateKeys(folder.resolve("elsewhere"));
    Register second = Register.enrol(lab, RIG, elsewhere, () -> Instant.EPOCH);
    append(second, 3);
    append(open(elsewhere), 4);
    RegisterCheck check = check();
    assertThat(check.findings()).isEmpty();
    assertThat(check.lines())
        .extracting(RegisterLine::kind)
        .containsExactly(Kind.CLOSE, Kind.CLOSE, Kind.KEY, Kind.CLOSE, Kind.CLOSE);
    assertThat(check.newKeys()).singleElement().matches(line -> line.test().equals("frame-1~2"));
    assertThat(Register.registeredTests(lab)).doesNotContain("frame-1~2");
    assertThat(lab.keysFolder().resolve("frame-1~2.pub")).exists();
  }

  @Test
  void check_newKeyWithoutItsLine_isFound() throws Exception {
    fill(1);
    PrivateKeys elsewhere = new PrivateKeys(folder.resolve("elsewhere"));
    RigKey key = elsewhere.make("frame-1~2");
    new PublicKeys(lab.keysFolder(), RIG).add("frame-1~2", key.publicHex());
    append(open(elsewhere), 2);
    assertThat(check().findings()).isNotEmpty();
  }

  @Test
  void open_publicKeyGone_isRefused() throws Exception {
    fill(1);
    Files.delete(lab.keysFolder().resolve(RIG + ".pub"));
    assertThatThrownBy(() -> open(keys))
        .isInstanceOf(LabException.class)
        .hasMessageContaining("public key");
  }

  @Test
  void privateKey_made_isOutsideTheLabAndForItsOwnerOnly() throws Exception {
    try (Stream<Path> files = Files.list(keys.folder())) {
      List<Path> found = files.toList();
      assertThat(found).hasSize(1);
      assertThat(found.get(0)).hasFileName(register.fingerprint() + ".key");
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(found.get(0))))
          .isEqualTo("rw-------");
    }
    try (Stream<Path> files = Files.walk(lab.root())) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(Files.readString(file, StandardCharsets.ISO_8859_1))
            .doesNotContain("PRIVATE KEY");
      }
    }
  }

  @Test
  void privateKey_replacedByAnother_isRefused() throws Exception {
    RigKey other = keys.make("other");
    Path own = keys.folder().resolve(register.fingerprint() + ".key");
    Files.write(
        own,
        Files.readAllBytes(
            keys.folder().resolve(PrivateKeys.fingerprint(other.publicHex()) + ".key")));
    assertThatThrownBy(() -> open(keys)).hasMessageContaining("another key");
  }

  @Test
  void usualFolder_followsTheEnvironment() {
    Path home = Path.of("/home/lab");
    assertThat(PrivateKeys.usualFolder(Map.of(), home))
        .isEqualTo(home.resolve(".config/platenwire/keys"));
    assertThat(PrivateKeys.usualFolder(Map.of("XDG_CONFIG_HOME", "/x"), home))
        .isEqualTo(Path.of("/x/platenwire/keys"));
    assertThat(PrivateKeys.usualFolder(Map.of("APPDATA", "/a"), home))
        .isEqualTo(Path.of("/a/platenwire/keys"));
    assertThat(PrivateKeys.usualFolder(Map.of("PLATENWIRE_KEYS", "/stick"), home))
        .isEqualTo(Path.of("/stick"));
  }

  @Test
  void append_afterATornLine_setsItAsideAndGoesOn() throws Exception {
    fill(2);
    byte[] whole = Files.readAllBytes(file());
    int second = new String(whole, StandardCharsets.US_ASCII).indexOf('\n') + 1;
    for (int cut = second; cut < whole.length; cut += 37) {
      Files.write(file(), java.util.Arrays.copyOf(whole, cut));
      append(register, 2);
      assertThat(check().findings()).isEmpty();
      assertThat(check().lines()).hasSize(2);
    }
    assertThat(file().resolveSibling(RIG + ".jsonl.torn")).exists();
  }

  @Test
  void begin_lastLineIsNone_isRefusedWithTheLine() throws Exception {
    fill(1);
    Files.writeString(file(), "{}\n", StandardOpenOption.APPEND);
    assertThatThrownBy(() -> append(register, 2))
        .isInstanceOf(LabException.class)
        .hasMessageContaining(":2:");
  }

  @Test
  void rigLock_secondRecorder_isRefusedAndToldWho() throws Exception {
    try (RigLock held = RigLock.take(lab, RIG, "specimen A by anna since 07:15")) {
      assertThat(held.rig()).isEqualTo(RIG);
      assertThat(RigLock.isTaken(lab, RIG)).isTrue();
      assertThat(RigLock.isTaken(lab, "frame-2")).isFalse();
      assertThatThrownBy(() -> RigLock.take(lab, RIG, "specimen B"))
          .isInstanceOf(LabException.class)
          .hasMessageContaining("specimen A by anna since 07:15");
    }
    assertThat(RigLock.isTaken(lab, RIG)).isFalse();
    RigLock.take(lab, RIG, "specimen B").close();
  }

  @Test
  void join_noSharedRegister_saysNothing() throws Exception {
    fill(1);
    assertThat(SharedRegister.join(lab, RIG)).isEmpty();
  }

  @Test
  void join_folderAwayThenBack_waitsThenJoins() throws Exception {
    Path shared = folder.resolve("share");
    lab = withShared("../share");
    fill(2);
    assertThat(SharedRegister.join(lab, RIG).orElseThrow())
        .contains("could not be reached")
        .contains("next close");
    Files.createDirectory(shared);
    assertThat(SharedRegister.join(lab, RIG)).isEmpty();
    append(register, 3);
    assertThat(SharedRegister.join(lab, RIG)).isEmpty();
    assertThat(shared.resolve(RIG + ".jsonl")).hasSameBinaryContentAs(file());
    assertThat(shared.resolve(RIG + ".pub")).exists();
  }

  @Test
  void join_copyDiffers_saysSoAndChangesNothing() throws Exception {
    Path shared = Files.createDirectory(folder.resolve("share"));
    lab = withShared(shared.toString());
    fill(2);
    SharedRegister.join(lab, RIG);
    List<String> lines = Files.readAllLines(file());
    write(List.of(lines.get(0)));
    append(register, 9);
    byte[] before = Files.readAllBytes(shared.resolve(RIG + ".jsonl"));
    assertThat(SharedRegister.join(lab, RIG).orElseThrow()).contains("is not the same");
    assertThat(shared.resolve(RIG + ".jsonl")).hasBinaryContent(before);
  }

  @Test
  void join_twoRigs_haveARegisterEach() throws Exception {
    Path shared = Files.createDirectory(folder.resolve("share"));
    lab = withShared(shared.toString());
    fill(1);
    Register second = Register.open(lab, "frame-2", keys, () -> Instant.EPOCH);
    append(second, 7);
    assertThat(SharedRegister.join(lab, RIG)).isEmpty();
    assertThat(SharedRegister.join(lab, "frame-2")).isEmpty();
    assertThat(shared.resolve("frame-1.jsonl")).exists();
    assertThat(shared.resolve("frame-2.jsonl")).exists();
    assertThat(RegisterCheck.of(lab, "frame-2").findings()).isEmpty();
    assertThat(lab.registerNames()).containsExactly("frame-1", "frame-2");
  }

  private LabFolder withShared(String path) throws Exception {
    Path settings = lab.root().resolve("lab.toml");
    Files.writeString(
        settings, Files.readString(settings) + "\nshared-register = \"" + path + "\"\n");
    return LabFolder.open(lab.root());
  }
}
