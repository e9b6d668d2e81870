package io.github.platenwire.lab;

import java.security.GeneralSecurityException;
import java.security.InvalidKeyException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.SignatureException;
import java.security.spec.InvalidKeySpecException;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.HexFormat;

/** Ed25519 signatures (RFC 8032) by what Java brings along. Stateless. */
final class Ed25519 {
  private static final String NAME = "Ed25519";

  /** What stands before the 32 bytes of a public key in its X.509 form (RFC 8410, section 4). */
  private static final byte[] PUBLIC_PREFIX = HexFormat.of().parseHex("302a300506032b6570032100");

  private Ed25519() {}

  static byte[] sign(PrivateKey key, byte[] message) {
    try {
      Signature signature = Signature.getInstance(NAME);
      signature.initSign(key);
      signature.update(message);
      return signature.sign();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Java 17 has Ed25519", e);
    }
  }

  /** Whether a signature is that of a key over a message; false also for what is no key at all. */
  static boolean isSigned(byte[] rawPublicKey, byte[] message, byte[] signed) {
    try {
      Signature signature = Signature.getInstance(NAME);
      signature.initVerify(publicKey(rawPublicKey));
      signature.update(message);
      return signature.verify(signed);
    } catch (SignatureException | InvalidKeyException | InvalidKeySpecException e) {
      return false;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Java 17 has Ed25519", e);
    }
  }

  static PublicKey publicKey(byte[] raw) throws InvalidKeySpecException {
    byte[] encoded = Arrays.copyOf(PUBLIC_PREFIX, PUBLIC_PREFIX.length + raw.length);
    System.arraycopy(raw, 0, encoded, PUBLIC_PREFIX.length, raw.length);
    return factory().generatePublic(new X509EncodedKeySpec(encoded));
  }

  static PrivateKey privateKey(byte[] pkcs8) throws InvalidKeySpecException {
    return factory().generatePrivate(new PKCS8EncodedKeySpec(pkcs8));
  }

  /** The 32 bytes of a public key. */
  static byte[] raw(byte[] encodedPublicKey) throws InvalidKeySpecException {
    int length = PUBLIC_PREFIX.length;
    if (encodedPublicKey.length != length + 32
        || !Arrays.equals(encodedPublicKey, 0, length, PUBLIC_PREFIX, 0, length)) {
      throw new InvalidKeySpecException("no Ed25519 public key");
    }
    return Arrays.copyOfRange(encodedPublicKey, length, encodedPublicKey.length);
  }

  private static KeyFactory factory() {
    try {
      return KeyFactory.getInstance(NAME);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Java 17 has Ed25519", e);
    }
  }
}
