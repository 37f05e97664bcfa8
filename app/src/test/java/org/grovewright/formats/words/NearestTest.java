package org.grovewright.formats.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
  private static final List<String> ALLOWED = List.of("pipe.pe-13", "pipe.pe-16", "loam", "lemon");

  @Test
  void findsSlipsOfThePen() {
    assertThat(Nearest.of("laom", ALLOWED)).contains("loam");
    assertThat(Nearest.of("lemmon", ALLOWED)).contains("lemon");
    assertThat(Nearest.of("LEMON", ALLOWED)).contains("lemon");
    assertThat(Nearest.of("pipe.pe_61", ALLOWED)).contains("pipe.pe-16");
  }

  @Test
  void doesNotGuessWildly() {
    assertThat(Nearest.of("cherry", ALLOWED)).isEmpty();
    assertThat(Nearest.of("x", ALLOWED)).isEmpty();
    assertThat(Nearest.of("l".repeat(1000), ALLOWED)).isEmpty();
  }

  @Test
  void shortensForMessages() {
    assertThat(Nearest.shorten("a\tb\u0007c")).isEqualTo("a?b?c");
    assertThat(Nearest.shorten("\ud83c\udf33".repeat(50))).hasSize(43).endsWith("...");
  }
}
