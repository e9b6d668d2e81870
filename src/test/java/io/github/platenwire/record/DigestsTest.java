package io.github.platenwire.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

class DigestsTest {
  /** FIPS 180 examples, from memory and computed again with another tool. */
  @Test
  void sha256Hex_publishedMessages_givesPublishedDigests() {
    assertThat(hex("abc"))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"))
        .isEqualTo("248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    assertThat(hex("a".repeat(1_000_000)))
        .isEqualTo("cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
  }

  /** NIST's test vectors for SHA-256 (SHA256ShortMsg.rsp of the CAVP). */
  @Test
  void sha256Hex_nistShortMessages_givesPublishedDigests() {
    assertThat(Digests.sha256Hex(new byte[0]))
        .isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    assertThat(Digests.sha256Hex(HexFormat.of().parseHex("d3")))
        .isEqualTo("28969cdfa74a12c82f3bad960b0b000aca2ac329deea5c2328ebc6f2ba9802c1");
    assertThat(Digests.sha256Hex(HexFormat.of().parseHex("11af")))
        .isEqualTo("5ca7133fa735326081558ac312c620eeca9970d1e70a4b95533d956f072d1f98");
    assertThat(Digests.sha256Hex(HexFormat.of().parseHex("b4190e")))
        .isEqualTo("dff2e73091f6c05e528896c4c831b9448653dc2ff043528f6769437bc7b975c2");
  }

  private static String hex(String text) {
    return Digests.sha256Hex(text.getBytes(StandardCharsets.US_ASCII));
  }

  /** All 65 of NIST's short messages (SHA256ShortMsg.rsp of the CAVP), as widely packed. */
  @Test
  void sha256Hex_allNistShortMessages_givesPublishedDigests() throws Exception {
    String folder = System.getenv("PLATENWIRE_CHECK_DATA");
    assumeTrue(folder != null, "needs PLATENWIRE_CHECK_DATA, the folder of check data");
    List<String> rows =
        Files.readAllLines(Path.of(folder, "sha256_cavp_short.csv")).stream()
            .filter(line -> !line.startsWith("#") && !line.startsWith("len_bits,"))
            .toList();
    assertThat(rows).hasSize(65);
    for (String row : rows) {
      String[] cells = row.split(",", -1);
      byte[] message = HexFormat.of().parseHex(cells[1], 0, Integer.parseInt(cells[0]) / 4);
      assertThat(Digests.sha256Hex(message)).isEqualTo(cells[2]);
      MessageDigest byPieces = Digests.sha256();
      for (byte one : message) {
        byPieces.update(one);
      }
      assertThat(Digests.hexSoFar(byPieces)).as("as a raw file is sealed").isEqualTo(cells[2]);
    }
  }
}
