package org.grovewright.web.api;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Optional;
import org.grovewright.store.Sessions;

/**
 * The cookie that holds a session: out of reach of scripts and of other sites.
 *
 * @param https whether the program itself encrypts the connection; behind a proxy that does, its
 *     header says so
 */
public record SessionCookie(boolean https) {
  private static final String NAME = "grovewright_session";

  /** The token that a request carries. */
  public Optional<String> token(Context context) {
    return Optional.ofNullable(context.cookie(NAME));
  }

  void set(Context context, String token) {
    context.cookie(cookie(context, token, (int) Sessions.LONGEST.toSeconds()));
  }

  void clear(Context context) {
    context.cookie(cookie(context, "", 0));
  }

  private Cookie cookie(Context context, String value, int seconds) {
    boolean secure = https || "https".equals(context.header("X-Forwarded-Proto"));
    return new Cookie(NAME, value, "/", seconds, secure, true, null, SameSite.STRICT);
  }
}
