package org.grovewright.web.api;

import io.javalin.http.Context;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.grovewright.model.Grove;
import org.grovewright.model.Preferences.Units;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.store.Role;
import org.grovewright.store.SiteState;
import org.grovewright.store.Store;

/**
 * What answering needs.
 *
 * @param store the database
 * @param groves groves and plans
 * @param needsLogin whether callers must sign in
 * @param log takes failures that are bugs
 */
public record Desk(Store store, Groves groves, boolean needsLogin, Consumer<Throwable> log) {
  private static final String ROLE = Desk.class.getName() + ".role";

  /** Remembers what the caller may do with the site of a request. */
  public static void remember(Context context, Role role) {
    context.attribute(ROLE, role);
  }

  /** The site of a request as it stands. */
  SiteState site(Context context) {
    return store.sites().get(context.pathParam("id"));
  }

  /** A state as the caller of a request sees it. */
  SiteView view(Context context, SiteState state) {
    Role role = context.attribute(ROLE);
    return SiteView.of(state, role == null ? Role.OWNER : role, store.trouble().isPresent());
  }

  /** Units in which a caller reads; without a choice, those of the description. */
  ReaderUnits units(Caller caller, Grove grove) {
    return new ReaderUnits(
        setting(caller, Settings.UNITS).map(Settings::units).orElse(grove.preferences().units()),
        grove.stock().currency());
  }

  /** Units a caller has chosen. */
  Optional<Units> chosenUnits(Caller caller) {
    return setting(caller, Settings.UNITS).map(Settings::units);
  }

  private Optional<String> setting(Caller caller, String name) {
    return caller.account().map(account -> settings(account.id()).get(name));
  }

  private Map<String, String> settings(String accountId) {
    return store.accounts().settings(accountId);
  }
}
