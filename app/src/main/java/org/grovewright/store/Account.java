package org.grovewright.store;

/**
 * Somebody who uses the program.
 *
 * @param id its lasting id
 * @param name the name it signs in with
 * @param hasPassword whether it can sign in from elsewhere
 */
public record Account(String id, String name, boolean hasPassword) {
  /** Id of the owner who works at the program's own machine. */
  public static final String LOCAL = "local";

  /** The account as an author. */
  public Author author() {
    return new Author(id, name);
  }
}
