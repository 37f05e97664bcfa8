package org.grovewright.web.views;

/**
 * A number as it is shown.
 *
 * @param text the number in the reader's units and language
 * @param figure id of the figure that holds its working, empty where there is none
 */
public record Shown(String text, String figure) {
  /** Nothing to show. */
  public static final Shown NONE = new Shown("", "");

  /** A text without a working. */
  static Shown plain(String text) {
    return new Shown(text, "");
  }
}
