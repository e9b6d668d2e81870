package io.github.platenwire.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class Ed25519Test {
  /** What stands before the 32 bytes of a seed in PKCS #8: RFC 8410, section 7. */
  private static final String PRIVATE_PREFIX = "302e020100300506032b657004220420";

  /**
   * RFC 8032, section 7.1, tests 1 to 3; test SHA(abc) is {@link #sign_rfc8032Abc_isAsPublished}.
   */
  @ParameterizedTest
  @CsvSource({
    "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60,"
        + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a,'',"
        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
        + "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb,"
        + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c,72,"
        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
        + "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7,"
        + "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025,af82,"
        + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
        + "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
  })
  void sign_rfc8032_isAsPublished(String seed, String key, String message, String signature)
      throws Exception {
    check(seed, key, hex(message), signature);
  }

  /** RFC 8032, section 7.1, test SHA(abc): the message is the SHA-512 of "abc". */
  @Test
  void sign_rfc8032Abc_isAsPublished() throws Exception {
    byte[] message =
        MessageDigest.getInstance("SHA-512").digest("abc".getBytes(StandardCharsets.US_ASCII));
    check(
        "833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42",
        "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
        message,
        "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b589"
            + "09351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704");
  }

  /** 64 vectors of the collection sign.input (message lengths 0 to 63), as widely packed. */
  @Test
  void sign_publishedCollection_isAsPublished() throws Exception {
    String folder = System.getenv("PLATENWIRE_CHECK_DATA");
    assumeTrue(folder != null, "needs PLATENWIRE_CHECK_DATA, the folder of check data");
    List<String> rows =
        Files.readAllLines(Path.of(folder, "ed25519_sign_input_first.csv")).stream()
            .filter(line -> !line.startsWith("#") && !line.startsWith("seed,"))
            .toList();
    assertThat(rows).hasSize(64);
    for (String row : rows) {
      String[] cells = row.split(",", -1);
      check(cells[0], cells[1], hex(cells[2]), cells[3]);
    }
  }

  @Test
  void isSigned_noKeyAtAll_isFalse() {
    assertThat(Ed25519.isSigned(new byte[32], new byte[0], new byte[64])).isFalse();
    assertThat(Ed25519.isSigned(new byte[5], new byte[0], new byte[64])).isFalse();
    assertThat(Ed25519.isSigned(new byte[32], new byte[0], new byte[3])).isFalse();
  }

  private static void check(String seed, String key, byte[] message, String signature)
      throws Exception {
    byte[] signed = Ed25519.sign(Ed25519.privateKey(hex(PRIVATE_PREFIX + seed)), message);
    assertThat(HexFormat.of().formatHex(signed)).isEqualTo(signature);
    assertThat(Ed25519.isSigned(hex(key), message, signed)).isTrue();
    assertThat(Ed25519.raw(Ed25519.publicKey(hex(key)).getEncoded())).isEqualTo(hex(key));
    byte[] other = java.util.Arrays.copyOf(message, message.length + 1);
    assertThat(Ed25519.isSigned(hex(key), other, signed)).isFalse();
  }

  private static byte[] hex(String text) {
    return HexFormat.of().parseHex(text);
  }
}
