package org.grovewright.start;

import java.util.List;

/**
 * Something to say beside a field of the form; the words stand with the texts of the screen.
 *
 * @param field the answer it is about, such as {@code bucketSeconds} or {@code plants[1].count}
 * @param code which text, without the prefix of its family
 * @param values what is filled into the text, as written in the description
 */
public record Remark(String field, String code, List<String> values) {
  /** Copies the values. */
  public Remark {
    values = List.copyOf(values);
  }
}
