package io.github.platenwire.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
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

  private static String hex(String text) {
    return Digests.sha256Hex(text.getBytes(StandardCharsets.US_ASCII));
  }
}
