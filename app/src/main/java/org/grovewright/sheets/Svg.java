package org.grovewright.sheets;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** Writes the elements of a drawing as text, escaping whatever is put into it. */
final class Svg {
  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Opens an element.
   *
   * @param name name of the element
   * @param attributes names and values in turn; numbers are written as coordinates
   */
  Svg open(String name, Object... attributes) {
    start(name, attributes);
    out.append(">\n");
    open.push(name);
    return this;
  }

  /**
   * Opens a drawing that says what it shows to those who cannot see it.
   *
   * @param width width of the sheet, in the drawing's own units
   * @param height height of the sheet
   * @param classes classes of the drawing, or empty text
   * @param labelledBy ids of the texts that name it, parted by spaces
   */
  Svg drawing(double width, double height, String classes, String labelledBy) {
    String viewBox = "0 0 " + Decimals.coordinate(width) + " " + Decimals.coordinate(height);
    List<Object> attributes =
        new ArrayList<>(List.of("xmlns", "http://www.w3.org/2000/svg", "viewBox", viewBox));
    if (!classes.isEmpty()) {
      attributes.addAll(List.of("class", classes));
    }
    attributes.addAll(List.of("role", "img", "aria-labelledby", labelledBy));
    return open("svg", attributes.toArray());
  }

  /** Leads a path on to a point; the first point begins it. */
  static void lead(StringBuilder path, double x, double y) {
    path.append(path.length() == 0 ? "M" : " L")
        .append(Decimals.coordinate(x))
        .append(' ')
        .append(Decimals.coordinate(y));
  }

  /** Writes an element without content. */
  Svg leaf(String name, Object... attributes) {
    start(name, attributes);
    out.append("/>\n");
    return this;
  }

  /** Writes an element that holds only text. */
  Svg text(String name, String content, Object... attributes) {
    start(name, attributes);
    out.append('>').append(escape(content)).append("</").append(name).append(">\n");
    return this;
  }

  /** Closes the element opened last. */
  Svg close() {
    out.append("</").append(open.pop()).append(">\n");
    return this;
  }

  /** Writes text as it stands; for style sheets of our own. */
  Svg raw(String markup) {
    out.append(markup);
    return this;
  }

  private void start(String name, Object... attributes) {
    if (attributes.length % 2 != 0) {
      throw new IllegalArgumentException("attribute without a value in " + name);
    }
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      Object value = attributes[i + 1];
      String text =
          value instanceof Number number
              ? Decimals.coordinate(number.doubleValue())
              : escape(String.valueOf(value));
      out.append(' ').append(attributes[i]).append("=\"").append(text).append('"');
    }
  }

  /** Escapes text for use as content or as an attribute between double quotes. */
  static String escape(String text) {
    StringBuilder safe = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> safe.append("&amp;");
        case '<' -> safe.append("&lt;");
        case '>' -> safe.append("&gt;");
        case '"' -> safe.append("&quot;");
        default -> {
          // XML has no place for control characters, not even escaped.
          boolean forbidden = c < 0x20 && c != '\n' && c != '\t';
          safe.append(forbidden ? ' ' : c);
        }
      }
    }
    return safe.toString();
  }

  /** The drawing so far. */
  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("element left open: " + open.peek());
    }
    return out.toString();
  }
}
