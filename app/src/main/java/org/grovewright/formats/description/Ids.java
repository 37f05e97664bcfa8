package org.grovewright.formats.description;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.grovewright.quantity.FigureBook;
import org.grovewright.texts.Sentence;

/**
 * The names given to one sort of thing. Two names that differ only in case or punctuation are
 * refused, since the plan's figures are named by what is left without these.
 */
final class Ids {
  private final String nounShape;
  private final Map<String, String> bySlug = new LinkedHashMap<>();

  Ids(String nounShape) {
    this.nounShape = nounShape;
  }

  /** Reads a name that nothing else of the sort may have. */
  Optional<String> read(Value value) {
    return value.id().filter(name -> add(name, value));
  }

  /** Takes a name made by us for a thing at this value; false if it is taken, which is noted. */
  boolean add(String id, Value value) {
    String before = bySlug.putIfAbsent(FigureBook.slug(id), id);
    if (before != null) {
      Sentence thing = Sentence.of(nounShape);
      value.problem(
          before.equals(id)
              ? Sentence.of("there is already a {0} '{1}'; give each its own name", thing, id)
              : Sentence.of(
                  "the {0} name '{1}' is too like '{2}'; give another", thing, id, before));
    }
    return before == null;
  }

  /** All names in the order they were given. */
  Set<String> all() {
    return new LinkedHashSet<>(bySlug.values());
  }
}
