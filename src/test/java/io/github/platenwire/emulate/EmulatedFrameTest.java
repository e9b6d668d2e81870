package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class EmulatedFrameTest {
  private static final Pattern SOUND = Pattern.compile("([+-]\\d{4}\\.\\d{2}) kN");

  private static final EmulatedIndicator PERFECT =
      EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1.5e6, 50);

  private static final EmulatedIndicator COMMON =
      PERFECT.withNoiseAndZero(30, 420).withJitterAndBursts(0.1, 0);

  private static EmulatedFrame frame(EmulatedIndicator indicator, long seed) {
    EmulatedCylinder cylinder = EmulatedCylinder.ofNormalConcrete(100, 200, 25, BreakKind.BRITTLE);
    FrameProgram program = FrameProgram.cylinderAtCommonRate(25);
    return new EmulatedFrame(new CylinderTruth(cylinder, program, seed), indicator, seed);
  }

  private static List<TimedBytes> all(EmulatedFrame frame) {
    List<TimedBytes> pieces = new ArrayList<>();
    frame.forEachRemaining(pieces::add);
    return pieces;
  }

  private static String text(List<TimedBytes> pieces) {
    StringBuilder text = new StringBuilder();
    pieces.forEach(piece -> text.append(new String(piece.bytes(), StandardCharsets.ISO_8859_1)));
    return text.toString();
  }

  private static String sha256(List<TimedBytes> pieces) throws NoSuchAlgorithmException {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    pieces.forEach(piece -> digest.update((piece.nanos() + "\n").getBytes(StandardCharsets.UTF_8)));
    pieces.forEach(piece -> digest.update(piece.bytes()));
    return HexFormat.of().formatHex(digest.digest());
  }

  private static long lines(String text) {
    return Pattern.compile("\r\n").matcher(text).results().count();
  }

  @Test
  void stream_sameSeed_isTheSameToTheByteAndNanosecond() throws NoSuchAlgorithmException {
    EmulatedIndicator faulty = COMMON.withFaults(allFaults());

    String first = sha256(all(frame(faulty, 5)));
    assertThat(sha256(all(frame(faulty, 5)))).isEqualTo(first);
    assertThat(sha256(all(frame(faulty, 6)))).isNotEqualTo(first);
    assertThat(first).isEqualTo("79ceb6c94e7bf35bf42b6d601783346ea585d11aefa15235d2156310c236c020");
  }

  @Property(tries = 20)
  void readings_perfectIndicator_areTheTruthToHalfAStep(@ForAll long seed) {
    EmulatedFrame frame = frame(PERFECT, seed);

    double greatest = 0;
    while (frame.hasNext()) {
      TimedBytes piece = frame.next();
      Matcher line = SOUND.matcher(text(List.of(piece)).strip());
      assertThat(line.matches()).isTrue();
      double newtons = Double.parseDouble(line.group(1)) * 1000;
      assertThat(newtons).isCloseTo(frame.truth().loadNewtons(piece.nanos()), within(5.000001));
      greatest = Math.max(greatest, newtons);
    }
    assertThat(frame.sent().greatestNewtons()).isEqualTo(greatest);
    assertThat(greatest).isCloseTo(((CylinderTruth) frame.truth()).peakNewtons(), within(10.0));
  }

  @Property(tries = 20)
  void readings_noiseAndZero_areOffByThatMuch(@ForAll long seed) {
    EmulatedFrame frame = frame(COMMON, seed);

    double sum = 0;
    double squares = 0;
    int count = 0;
    while (frame.hasNext()) {
      TimedBytes piece = frame.next();
      double newtons = Double.parseDouble(text(List.of(piece)).substring(0, 8)) * 1000;
      double off = newtons - frame.truth().loadNewtons(piece.nanos());
      sum += off;
      squares += off * off;
      count++;
    }
    double mean = sum / count;
    assertThat(mean).isCloseTo(420, within(5.0));
    assertThat(Math.sqrt(squares / count - mean * mean)).isCloseTo(30, within(3.0));
    assertThat(frame.sent().zeroNewtons()).isEqualTo(420);
    assertThat(frame.sent().greatestAboveZeroNewtons())
        .isCloseTo(((CylinderTruth) frame.truth()).peakNewtons(), within(200.0));
  }

  @Test
  void stamps_jitter_riseAndStayWithinTheirShareOfTheInterval() {
    List<TimedBytes> pieces = all(frame(COMMON, 9));

    double worst = 0;
    for (int i = 0; i < pieces.size(); i++) {
      double even = (i + 0.5) * 20e6;
      worst = Math.max(worst, Math.abs(pieces.get(i).nanos() - even));
      assertThat(i == 0 || pieces.get(i).nanos() > pieces.get(i - 1).nanos()).isTrue();
    }
    assertThat(worst).isBetween(1.5e6, 2.000001e6);
  }

  @Test
  void stream_wholeTest_lastsFromIdleToTail() {
    EmulatedFrame frame = frame(PERFECT, 9);
    List<TimedBytes> pieces = all(frame);

    assertThat(pieces.get(0).nanos()).isEqualTo(10_000_000);
    assertThat(pieces.get(pieces.size() - 1).nanos())
        .isBetween(frame.truth().endNanos() - 20_000_000, frame.truth().endNanos());
    assertThat(frame.sent().linesSent()).isEqualTo(pieces.size());
    assertThat(frame.hasNext()).isFalse();
    assertThatThrownBy(frame::next).isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void bursts_adapterHoldsBack_giveTheSameBytesAtMultiplesOf16Milliseconds() {
    EmulatedIndicator quick =
        EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1.5e6, 1000);
    List<TimedBytes> single = all(frame(quick, 4));
    EmulatedFrame frame =
        frame(quick.withJitterAndBursts(0, EmulatedIndicator.ADAPTER_BURST_NANOS), 4);
    List<TimedBytes> bursts = all(frame);

    assertThat(text(bursts)).isEqualTo(text(single));
    assertThat(bursts).allMatch(piece -> piece.nanos() % 16_000_000 == 0);
    assertThat(bursts.get(3).bytes()).hasSize(16 * "+0000.00 kN\r\n".length());
    assertThat(frame.sent().linesSent()).isEqualTo(single.size());
    assertThat(frame.sent().bytesSent()).isEqualTo(text(bursts).length());
  }

  @Test
  void overload_specimenStrongerThanTheDevice_isHeldAndSaid() {
    EmulatedIndicator weak =
        EmulatedIndicator.perfect(
            LineLayout.STATUS_KILONEWTONS, new BigDecimal("0.05"), 100_000, 10);
    String text = text(all(frame(weak, 4)));

    assertThat(text).contains("OL,-------,kN\r\n").doesNotContain("ST,+00100.00");
    assertThat(text).contains("ST,+00000.00,kN\r\n");
  }

  private static Faults allFaults() {
    return Faults.NONE
        .withGlitches(0.01)
        .withGarbage(0.02)
        .withTornLines(0.03)
        .withFlippedBits(0.04)
        .withSilences(0.001, 1.5);
  }

  @Property(tries = 20)
  void faults_allKinds_areCountedTruthfully(@ForAll long seed) {
    EmulatedFrame frame = frame(PERFECT.withFaults(allFaults()), seed);
    List<TimedBytes> pieces = all(frame);
    SentTruth sent = frame.sent();
    String text = text(pieces);

    assertThat(lines(text)).isEqualTo(sent.linesSent()).isEqualTo(pieces.size());
    assertThat(text.length()).isEqualTo(sent.bytesSent());
    assertThat(sent.linesSent() + sent.readingsWithheld())
        .isEqualTo(all(frame(PERFECT, seed)).size());
    long wrong = 0;
    long unlike = 0;
    for (TimedBytes piece : pieces) {
      Matcher line = SOUND.matcher(text(List.of(piece)).replace("\r\n", ""));
      if (!line.matches()) {
        unlike++;
      } else if (Math.abs(
              Double.parseDouble(line.group(1)) * 1000 - frame.truth().loadNewtons(piece.nanos()))
          > 5.000001) {
        wrong++;
      }
    }
    assertThat(unlike).isBetween(sent.garbageRuns() + sent.linesTorn(), sent.linesSpoilt());
    assertThat(wrong + unlike)
        .isBetween(
            sent.glitches() + sent.garbageRuns() + sent.linesTorn(),
            sent.glitches() + sent.linesSpoilt());
  }

  @Test
  void glitches_alone_areWholeLinesFarOffAndNeverTwiceRunning() {
    EmulatedFrame frame = frame(PERFECT.withFaults(Faults.NONE.withGlitches(0.2)), 8);

    long wild = 0;
    boolean before = false;
    while (frame.hasNext()) {
      TimedBytes piece = frame.next();
      double newtons = Double.parseDouble(text(List.of(piece)).substring(0, 8)) * 1000;
      double off = Math.abs(newtons - frame.truth().loadNewtons(piece.nanos()));
      boolean isWild = off > 100;
      assertThat(isWild && before).isFalse();
      assertThat(isWild && off < 0.19 * 1.5e6).isFalse();
      wild += isWild ? 1 : 0;
      before = isWild;
    }
    assertThat(frame.sent().glitches()).isEqualTo(wild).isGreaterThan(100);
    assertThat(frame.sent().linesSpoilt()).isZero();
    assertThat(frame.sent().greatestNewtons())
        .isCloseTo(((CylinderTruth) frame.truth()).peakNewtons(), within(20.0));
  }

  @Test
  void silences_alone_leaveGapsOfTheirLength() {
    EmulatedFrame frame = frame(PERFECT.withFaults(Faults.NONE.withSilences(0.001, 2.5)), 8);
    List<TimedBytes> pieces = all(frame);

    long gaps = 0;
    for (int i = 1; i < pieces.size(); i++) {
      long gap = pieces.get(i).nanos() - pieces.get(i - 1).nanos();
      if (gap > 20_000_001) {
        assertThat(gap).isGreaterThanOrEqualTo(2_500_000_000L);
        gaps++;
      }
    }
    assertThat(gaps).isPositive();
    assertThat(frame.sent().silences()).isBetween(gaps, gaps + 2);
    assertThat(frame.sent().readingsWithheld()).isEqualTo(125 * gaps);
  }

  @Test
  void faults_switchedOn_leaveTheSoundLinesAsTheyWere() {
    List<TimedBytes> sound = all(frame(COMMON, 12));
    List<TimedBytes> faulty = all(frame(COMMON.withFaults(Faults.NONE.withTornLines(0.1)), 12));

    assertThat(faulty).hasSameSizeAs(sound);
    long same = 0;
    for (int i = 0; i < sound.size(); i++) {
      assertThat(faulty.get(i).nanos()).isEqualTo(sound.get(i).nanos());
      same += text(List.of(faulty.get(i))).equals(text(List.of(sound.get(i)))) ? 1 : 0;
    }
    assertThat(same / (double) sound.size()).isCloseTo(0.9, within(0.03));
  }

  @Test
  void newFaults_sharesTogetherAboveOne_refuses() {
    assertThatThrownBy(() -> Faults.NONE.withGarbage(0.6).withTornLines(0.6))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("sum of the shares");
  }

  @Test
  void summary_wholeTest_saysTheTruthInBothSystems() {
    EmulatedFrame frame = frame(PERFECT, 3);
    assertThat(TruthSummary.of(frame).words()).contains("Greatest sound reading sent none");
    all(frame);
    TruthSummary summary = TruthSummary.of(frame);

    // 25 MPa / 0.00689475729316836 = 3625.94 psi; 25 π 100²/4 = 196 349.5 N; / 4.4482216152605 N.
    assertThat(summary.strengthWords()).isEqualTo("25.0 MPa (3630 psi)");
    assertThat(summary.peakWords()).isEqualTo("196.35 kN (44140 lbf)");
    assertThat(summary.words())
        .startsWith("True strength 25.0 MPa (3630 psi).\nTrue peak 196.35 kN (44140 lbf) after ")
        .contains("Readings sent " + frame.sent().linesSent() + "; spoilt 0; wild values 0");
  }
}
