package org.grovewright.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** Random tokens, and what is kept of them: only a hash, so that a stolen file opens nothing. */
final class Secrets {
  private static final SecureRandom RANDOM = new SecureRandom();

  private Secrets() {}

  /** A token nobody can guess: 256 random bits. */
  static String token() {
    byte[] bytes = new byte[32];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** What is kept of a token. */
  static String hash(String token) {
    return hash(token.getBytes(StandardCharsets.UTF_8));
  }

  /** SHA-256 of bytes, as hexadecimal digits. */
  static String hash(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
