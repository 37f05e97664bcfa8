package org.grovewright.formats.inp;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A network text split into sections and lines, with comments taken off. */
final class InpSections {
  /**
   * One line of a section.
   *
   * @param number its line in the text, from 1
   * @param fields its words, at least one
   */
  record Line(int number, List<String> fields) {
    String field(int at) {
      return fields.get(at);
    }

    int size() {
      return fields.size();
    }
  }

  private final Map<String, List<Line>> lines = new LinkedHashMap<>();
  private final Map<String, Integer> firstLine = new LinkedHashMap<>();

  InpSections(String text) {
    String section = "";
    int number = 0;
    boolean ended = false;
    for (String whole : text.split("\\R", -1)) {
      number++;
      int comment = whole.indexOf(';');
      String line = (comment < 0 ? whole : whole.substring(0, comment)).strip();
      if (line.isEmpty() || ended) {
        continue;
      }
      if (line.startsWith("[")) {
        section = line.replaceAll("[\\[\\]]", "").strip().toUpperCase(Locale.ROOT);
        ended = section.equals("END");
        if (!ended) {
          lines.computeIfAbsent(section, name -> new ArrayList<>());
          firstLine.putIfAbsent(section, number);
        }
      } else {
        lines
            .computeIfAbsent(section, name -> new ArrayList<>())
            .add(new Line(number, List.of(line.split("\\s+"))));
        firstLine.putIfAbsent(section, number);
      }
    }
  }

  /** Names of all sections in order. */
  Iterable<String> names() {
    return lines.keySet();
  }

  /** Lines of a section; none where the text lacks it. */
  List<Line> lines(String section) {
    return lines.getOrDefault(section, List.of());
  }

  /** Line on which a section starts. */
  int start(String section) {
    return firstLine.getOrDefault(section, 0);
  }
}
