package org.grovewright.web.api;

import io.javalin.http.Context;
import java.util.Optional;
import org.grovewright.store.Account;
import org.grovewright.store.Author;

/**
 * Who asks.
 *
 * @param account the account, unless nobody is signed in
 * @param csrf what every change must carry in the header {@code X-CSRF}
 * @param session token of the session, if there is one
 */
public record Caller(Optional<Account> account, String csrf, Optional<String> session) {
  private static final String ATTRIBUTE = Caller.class.getName();

  /** Remembers the caller for the rest of a request. */
  public void of(Context context) {
    context.attribute(ATTRIBUTE, this);
  }

  /** The caller of a request. */
  public static Caller from(Context context) {
    return known(context).orElseThrow(() -> new IllegalStateException("nobody asked who calls"));
  }

  /** The caller of a request, unless it was refused before anybody asked who calls. */
  static Optional<Caller> known(Context context) {
    return Optional.ofNullable(context.attribute(ATTRIBUTE));
  }

  /** The account that is signed in. */
  public Account signedIn() {
    return account.orElseThrow(
        () -> new ApiException(401, "signed-out", "Sign in to go on; nothing was changed."));
  }

  /** The account as an author. */
  public Author author() {
    return signedIn().author();
  }

  /** Whether this is the owner of the program. */
  public boolean keeper() {
    return account.map(Account::id).equals(Optional.of(Account.LOCAL));
  }
}
