package org.grovewright.quantity;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The figures of one plan in the order they were found. A book is filled while the plan is made, by
 * one thread, and only read afterwards.
 */
public final class FigureBook {
  private static final Pattern SLUG = Pattern.compile("[a-z0-9]+(?:-[a-z0-9]+)*+");
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern NOT_OF_SLUG = Pattern.compile("[^a-z0-9]+");

  private final Map<String, Figure> byId = new LinkedHashMap<>();

  /**
   * Enters a figure and returns it.
   *
   * @throws IllegalStateException if the id is taken: two figures under one name are a bug of ours
   */
  public Figure enter(String id, String label, double value, Kind kind, Working working) {
    Figure figure = new Figure(id, label, value, kind, working);
    if (byId.putIfAbsent(id, figure) != null) {
      throw new IllegalStateException("two figures with the id " + id);
    }
    return figure;
  }

  /** The figure with this id, if there is one. */
  public Optional<Figure> find(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /**
   * The figure with this id.
   *
   * @throws IllegalStateException if there is none
   */
  public Figure get(String id) {
    Figure figure = byId.get(id);
    if (figure == null) {
      throw new IllegalStateException("no figure with the id " + id);
    }
    return figure;
  }

  /** All figures in the order they were entered. */
  public List<Figure> all() {
    return List.copyOf(byId.values());
  }

  /** All figures whose id starts with this prefix, in order. */
  public List<Figure> under(String prefix) {
    List<Figure> found = new ArrayList<>();
    for (Figure figure : byId.values()) {
      if (figure.id().startsWith(prefix)) {
        found.add(figure);
      }
    }
    return found;
  }

  /** Turns a name into a part of a figure id: lower case letters and digits joined by hyphens. */
  public static String slug(String name) {
    if (SLUG.matcher(name).matches()) {
      return name;
    }
    String letters = MARKS.matcher(Normalizer.normalize(name, Normalizer.Form.NFD)).replaceAll("");
    String plain = NOT_OF_SLUG.matcher(letters.toLowerCase(Locale.ROOT)).replaceAll("-");
    int from = plain.startsWith("-") ? 1 : 0;
    int to = plain.length() - (plain.length() > from && plain.endsWith("-") ? 1 : 0);
    return from == to ? "x" : plain.substring(from, to);
  }

  /** Turns a catalogue key into the middle of a figure id, part by part, keeping its dots. */
  public static String slugOfKey(String key) {
    StringBuilder id = new StringBuilder();
    int from = 0;
    for (int dot = key.indexOf('.'); dot >= 0; dot = key.indexOf('.', from)) {
      id.append(slug(key.substring(from, dot))).append('.');
      from = dot + 1;
    }
    return id.append(slug(key.substring(from))).toString();
  }
}
