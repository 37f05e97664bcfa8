package org.grovewright.web.api;

import io.javalin.security.RouteRole;
import java.util.Optional;
import org.grovewright.store.Role;

/** Who may use a route. */
public enum Access implements RouteRole {
  /** Anybody, signed in or not. */
  ANYBODY,
  /** Whoever is signed in. */
  SIGNED_IN,
  /** Whoever may see the site of the route. */
  VIEWER,
  /** Whoever may write in the journal of the site of the route. */
  HELPER,
  /** Who owns the site of the route. */
  OWNER,
  /** The owner of the program: accounts and the database as a whole. */
  KEEPER;

  /** The role on the site that the route wants, if it is about a site. */
  public Optional<Role> role() {
    return switch (this) {
      case VIEWER -> Optional.of(Role.VIEWER);
      case HELPER -> Optional.of(Role.HELPER);
      case OWNER -> Optional.of(Role.OWNER);
      default -> Optional.empty();
    };
  }
}
