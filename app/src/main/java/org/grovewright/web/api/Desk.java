package org.grovewright.web.api;

import io.javalin.http.Context;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.grovewright.model.Grove;
import org.grovewright.model.Preferences.Units;
import org.grovewright.store.Role;
import org.grovewright.store.SiteState;
import org.grovewright.store.Store;
import org.grovewright.store.StoreException;
import org.grovewright.texts.Language;
import org.grovewright.web.views.Voice;

/**
 * What answering needs.
 *
 * @param opening gives the database, and waits until it is open
 * @param groves groves and plans
 * @param needsLogin whether callers must sign in
 * @param limits how often somebody may do something
 * @param cookies the cookie of a session
 * @param log takes failures that are bugs
 */
public record Desk(
    Supplier<Store> opening,
    Groves groves,
    boolean needsLogin,
    Limits limits,
    SessionCookie cookies,
    Consumer<Throwable> log) {
  private static final String ROLE = Desk.class.getName() + ".role";

  /** The database. */
  public Store store() {
    return opening.get();
  }

  /** Remembers what the caller may do with the site of a request. */
  public static void remember(Context context, Role role) {
    context.attribute(ROLE, role);
  }

  /** The site of a request as it stands. */
  SiteState site(Context context) {
    return store().sites().get(context.pathParam("id"));
  }

  /** A state as the caller of a request sees it. */
  SiteView view(Context context, SiteState state) {
    Role role = context.attribute(ROLE);
    return SiteView.of(state, role == null ? Role.OWNER : role, store().trouble().isPresent());
  }

  /**
   * How a caller is spoken to about a grove. Without a choice of its own: in the units of the
   * description, and in the language that its browser asks for.
   */
  Voice voice(Context context, Grove grove) {
    Map<String, String> settings = settings(context);
    return Voice.of(
        settings.getOrDefault(Settings.LANGUAGE, asked(context)),
        Optional.ofNullable(settings.get(Settings.UNITS))
            .map(Settings::units)
            .orElse(grove.preferences().units()),
        grove.stock().currency());
  }

  /** How a caller is spoken to about what belongs to no plan. */
  Voice voice(Context context) {
    Map<String, String> settings = settings(context);
    return Voice.of(
        settings.getOrDefault(Settings.LANGUAGE, asked(context)),
        Optional.ofNullable(settings.get(Settings.UNITS)).map(Settings::units).orElse(Units.METRIC),
        "");
  }

  /**
   * The language in which a request is refused: that of whoever is signed in, or else the one that
   * its browser asks for. It is known whatever went wrong before.
   */
  Language language(Context context) {
    try {
      String chosen =
          Caller.known(context)
              .flatMap(Caller::account)
              .map(account -> store().accounts().settings(account.id()).get(Settings.LANGUAGE))
              .orElseGet(() -> asked(context));
      return Language.of(chosen);
    } catch (StoreException e) {
      // A database that cannot be read must not keep us from saying so.
      return Language.of(asked(context));
    }
  }

  private Map<String, String> settings(Context context) {
    return Caller.from(context)
        .account()
        .map(account -> store().accounts().settings(account.id()))
        .orElse(Map.of());
  }

  private static String asked(Context context) {
    String header = context.header("Accept-Language");
    for (String part : header == null ? new String[0] : header.split(",")) {
      String tag = part.strip().split("[-;]", 2)[0].toLowerCase(Locale.ROOT);
      if (Language.tags().contains(tag)) {
        return tag;
      }
    }
    return Language.ENGLISH.tag();
  }
}
