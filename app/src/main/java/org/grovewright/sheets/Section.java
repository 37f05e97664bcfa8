package org.grovewright.sheets;

import java.util.List;

/**
 * A section of the report, which answers one question of the owner.
 *
 * @param id name for links within the page
 * @param title the question or subject
 * @param blocks its contents
 */
public record Section(String id, String title, List<Block> blocks) {
  /** Copies the blocks. */
  public Section {
    blocks = List.copyOf(blocks);
  }
}
