package org.grovewright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.security.RouteRole;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Iterator;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.grovewright.store.Account;
import org.grovewright.store.Role;
import org.grovewright.store.Sessions;
import org.grovewright.store.Store;
import org.grovewright.store.StoreException;
import org.grovewright.web.api.Access;
import org.grovewright.web.api.ApiException;
import org.grovewright.web.api.Caller;
import org.grovewright.web.api.Desk;
import org.grovewright.web.api.Limits;
import org.grovewright.web.api.SessionCookie;

/** Looks at every request before it is answered. */
final class Guard {
  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
          + " font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self';"
          + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final Supplier<Store> store;
  private final Hosts hosts;
  private final boolean signIn;
  private final SessionCookie cookies;
  private final Limits limits;
  private final String ownWord;

  /**
   * A guard.
   *
   * @param store gives the database, which knows accounts, sessions and roles
   * @param hosts names by which the program may be called
   * @param signIn whether callers must sign in
   * @param cookies the cookie of a session
   * @param limits how often somebody may do something
   */
  Guard(Supplier<Store> store, Hosts hosts, boolean signIn, SessionCookie cookies, Limits limits) {
    this.store = store;
    this.hosts = hosts;
    this.signIn = signIn;
    this.cookies = cookies;
    this.limits = limits;
    byte[] random = new byte[32];
    new SecureRandom().nextBytes(random);
    this.ownWord = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
  }

  void addTo(RoutesConfig routes) {
    routes.before(this::look);
    routes.beforeMatched("/api/*", this::admit);
  }

  private void look(Context context) {
    headers(context);
    if (!hosts.knows(context.header("Host"))) {
      throw new ApiException(
          403,
          "host",
          "This address is not one that Grovewright answers to. Open it by the address that it"
              + " printed when it started, or name this one with --host-name.");
    }
    if (!context.path().startsWith("/api/")) {
      return;
    }
    context.header("Cache-Control", "no-store");
    boolean reading = READING.contains(context.method().name());
    String site = context.header("Sec-Fetch-Site");
    if (site != null && !site.equals("same-origin") && !(reading && site.equals("none"))) {
      throw elsewhere();
    }
    String origin = context.header("Origin");
    if (origin != null && !hosts.sameOrigin(origin, context.header("Host"))) {
      throw elsewhere();
    }
    Caller caller = caller(context);
    caller.of(context);
    if (!reading && !same(caller.csrf(), context.header("X-CSRF"))) {
      throw new ApiException(
          403, "csrf", "This page is from before the program was started anew; load it again.");
    }
    // Who works alone at the own machine takes nothing from others.
    if (!reading && signIn) {
      count(context, caller);
    }
  }

  private void count(Context context, Caller caller) {
    String who = caller.account().map(Account::id).orElseGet(context::ip);
    if (context.path().endsWith("/try") || context.path().endsWith("/try/cost")) {
      limits.look(who);
    } else {
      limits.change(who);
    }
  }

  private static ApiException elsewhere() {
    return new ApiException(
        403, "cross-site", "Another site's page asked for this, and it was refused.");
  }

  private void headers(Context context) {
    context
        .header("Content-Security-Policy", POLICY)
        .header("X-Content-Type-Options", "nosniff")
        .header("X-Frame-Options", "DENY")
        .header("Referrer-Policy", "no-referrer")
        .header("Cross-Origin-Opener-Policy", "same-origin")
        .header("Cross-Origin-Resource-Policy", "same-origin")
        .header("Permissions-Policy", "camera=(), microphone=(), payment=(), usb=()");
    if (cookies.https()) {
      context.header("Strict-Transport-Security", "max-age=31536000");
    }
  }

  private Caller caller(Context context) {
    if (!signIn) {
      return new Caller(Optional.of(local()), ownWord, Optional.empty());
    }
    Optional<String> token = cookies.token(context);
    Optional<Sessions.Session> session = token.flatMap(store.get().sessions()::find);
    return session
        .map(found -> new Caller(Optional.of(found.account()), found.csrf(), token))
        .orElseGet(() -> new Caller(Optional.empty(), ownWord, Optional.empty()));
  }

  private Account local() {
    try {
      return store.get().accounts().local();
    } catch (StoreException e) {
      // The owner of a damaged file must still get in, to put a copy in its place.
      if (store.get().trouble().isEmpty()) {
        throw e;
      }
      return new Account(Account.LOCAL, "", false);
    }
  }

  private void admit(Context context) {
    Iterator<RouteRole> roles = context.routeRoles().iterator();
    if (!roles.hasNext() || !(roles.next() instanceof Access access)) {
      throw new IllegalStateException("a route that names nobody: " + context.path());
    }
    if (access == Access.ANYBODY) {
      return;
    }
    Caller caller = Caller.from(context);
    Account account = caller.signedIn();
    if (access == Access.KEEPER && !caller.keeper()) {
      throw new ApiException(403, "forbidden", "Only the owner of the program may do this.");
    }
    access.role().ifPresent(wanted -> admit(context, account, wanted));
  }

  private void admit(Context context, Account account, Role wanted) {
    Role role =
        store
            .get()
            .sites()
            .role(context.pathParam("id"), account.id())
            .orElseThrow(() -> new ApiException(404, "missing", "There is no such site."));
    if (!role.includes(wanted)) {
      throw new ApiException(
          403,
          "forbidden",
          wanted == Role.OWNER
              ? "Only an owner of this site may do this."
              : "You may look at this site, but not write in it. Ask its owner to let you help.");
    }
    Desk.remember(context, role);
  }

  private static boolean same(String wanted, String given) {
    return given != null
        && MessageDigest.isEqual(
            wanted.getBytes(StandardCharsets.UTF_8), given.getBytes(StandardCharsets.UTF_8));
  }
}
