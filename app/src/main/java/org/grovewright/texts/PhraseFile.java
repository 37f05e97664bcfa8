package org.grovewright.texts;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Reads the part of the PO format of GNU gettext that phrases need: {@code msgid} and {@code
 * msgstr}, strings carried on over lines, and comments.
 */
final class PhraseFile {
  private PhraseFile() {}

  /**
   * The translations by English phrase, in the order of the file.
   *
   * @throws IllegalArgumentException if the text is not of that form, naming the line
   */
  static Map<String, String> read(String text, String file) {
    Map<String, String> entries = new LinkedHashMap<>();
    StringBuilder id = null;
    StringBuilder string = null;
    int number = 0;
    for (String line : text.split("\n", -1)) {
      number++;
      String trimmed = line.strip();
      if (trimmed.startsWith("msgid ")) {
        put(entries, id, string, file, number);
        id = new StringBuilder(quoted(trimmed.substring(6), file, number));
        string = null;
      } else if (trimmed.startsWith("msgstr ")) {
        string = new StringBuilder(quoted(trimmed.substring(7), file, number));
      } else if (trimmed.startsWith("\"")) {
        (string == null ? id : string).append(quoted(trimmed, file, number));
      } else if (!trimmed.isEmpty() && !trimmed.startsWith("#")) {
        throw bad(file, number, "neither msgid, msgstr, a string nor a comment");
      }
    }
    put(entries, id, string, file, number);
    return entries;
  }

  private static void put(
      Map<String, String> entries, StringBuilder id, StringBuilder string, String file, int line) {
    if (id == null) {
      return;
    }
    if (string == null) {
      throw bad(file, line, "a msgid without its msgstr stands before it");
    }
    // The empty phrase is the head of the file.
    if (id.length() > 0 && entries.put(id.toString(), string.toString()) != null) {
      throw bad(file, line, "the phrase before it stands twice: " + id);
    }
  }

  private static String quoted(String text, String file, int line) {
    String trimmed = text.strip();
    if (trimmed.length() < 2 || !trimmed.startsWith("\"") || !trimmed.endsWith("\"")) {
      throw bad(file, line, "a string must stand in quotes");
    }
    StringBuilder plain = new StringBuilder();
    String inner = trimmed.substring(1, trimmed.length() - 1);
    for (int i = 0; i < inner.length(); i++) {
      char c = inner.charAt(i);
      if (c == '\\' && i + 1 < inner.length()) {
        i++;
        plain.append(inner.charAt(i) == 'n' ? '\n' : inner.charAt(i));
      } else {
        plain.append(c);
      }
    }
    return plain.toString();
  }

  private static IllegalArgumentException bad(String file, int line, String what) {
    return new IllegalArgumentException(file + ", line " + line + ": " + what);
  }
}
