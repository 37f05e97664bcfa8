package org.grovewright.formats.inp;

import java.util.List;

/**
 * A network as text.
 *
 * @param text the text, with line feeds
 * @param notes what the format cannot say, or says in another way
 */
public record InpWriting(String text, List<InpNote> notes) {
  /** Copies the notes. */
  public InpWriting {
    notes = List.copyOf(notes);
  }
}
