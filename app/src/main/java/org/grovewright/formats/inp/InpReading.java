package org.grovewright.formats.inp;

import java.util.List;
import org.grovewright.hydraulics.Network;

/**
 * What was read from a network text.
 *
 * @param network the network; may itself have problems
 * @param notes what was left out or not understood, in the order of the text
 */
public record InpReading(Network network, List<InpNote> notes) {
  /** Copies the notes. */
  public InpReading {
    notes = List.copyOf(notes);
  }

  /** True where nothing that matters was left out. */
  public boolean complete() {
    return notes.stream().noneMatch(note -> note.severity() == InpNote.Severity.ERROR);
  }
}
