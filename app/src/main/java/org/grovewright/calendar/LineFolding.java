package org.grovewright.calendar;

import java.nio.charset.StandardCharsets;

/**
 * Folds content lines as RFC 5545, section 3.1 asks: no line over 75 octets of UTF-8, and no
 * character broken. The writing library counts characters instead, which is too long for any text
 * beyond ASCII.
 */
final class LineFolding {
  private static final int MOST_OCTETS = 75;
  private static final String LINE_END = "\r\n";

  private LineFolding() {}

  static String fold(String unfolded) {
    StringBuilder folded = new StringBuilder();
    int octets = 0;
    for (int i = 0; i < unfolded.length(); ) {
      if (unfolded.startsWith(LINE_END, i)) {
        folded.append(LINE_END);
        octets = 0;
        i += LINE_END.length();
        continue;
      }
      int next = unfolded.offsetByCodePoints(i, 1);
      String character = unfolded.substring(i, next);
      int size = character.getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > MOST_OCTETS) {
        folded.append(LINE_END).append(' ');
        octets = 1;
      }
      folded.append(character);
      octets += size;
      i = next;
    }
    return folded.toString();
  }
}
