package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.grovewright.store.Account;
import org.grovewright.store.Sessions;
import org.grovewright.store.StoreException;
import org.grovewright.texts.Language;

/** Who the caller is and how it likes to read. */
final class AccountApi {
  private static final int CHECKS_AT_A_TIME = 2;

  private final Desk desk;
  private final Semaphore checks = new Semaphore(CHECKS_AT_A_TIME);

  AccountApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/me", this::me, Access.ANYBODY);
    routes.put("/api/me/settings", this::settings, Access.SIGNED_IN);
    routes.put("/api/me/password", this::password, Access.SIGNED_IN);
    routes.post("/api/login", this::login, Access.ANYBODY);
    routes.post("/api/logout", this::logout, Access.SIGNED_IN);
  }

  private record AccountView(String id, String name) {}

  private void me(Context context) {
    Caller caller = Caller.from(context);
    Map<String, Object> answer = new LinkedHashMap<>();
    caller
        .account()
        .ifPresent(account -> answer.put("account", new AccountView(account.id(), account.name())));
    answer.put("loggedIn", caller.account().isPresent());
    answer.put("signedIn", caller.session().isPresent());
    answer.put("needsLogin", desk.needsLogin() && caller.account().isEmpty());
    answer.put("keeper", caller.keeper());
    answer.put("csrf", caller.csrf());
    answer.put("settings", settings(caller));
    answer.put("languages", Language.tags());
    ProgramApi.addTrouble(answer, desk, context);
    Json.send(context, answer);
  }

  private void login(Context context) {
    JsonNode body = Json.body(context);
    String name = Json.text(body, "name");
    String password = Json.text(body, "password");
    if (!desk.needsLogin()) {
      throw new ApiException(409, "refused", "Nobody needs to sign in on this machine.");
    }
    desk.limits().login(context.ip(), name);
    Account account =
        checked(name, password)
            .orElseThrow(
                () ->
                    new ApiException(
                        401, "wrong-password", "This name and this password do not go together."));
    Sessions.Started started = desk.store().sessions().start(account.id());
    desk.cookies().set(context, started.token());
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("account", new AccountView(account.id(), account.name()));
    answer.put("csrf", started.csrf());
    Json.send(context, answer);
  }

  /** Each check takes much memory on purpose; many at a time would take all there is. */
  private Optional<Account> checked(String name, String password) {
    try {
      checks.acquire();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
    try {
      return desk.store().accounts().check(name, password);
    } finally {
      checks.release();
    }
  }

  /**
   * Whoever signs in may change its own password; every browser it is signed in on is signed out.
   */
  private void password(Context context) {
    JsonNode body = Json.body(context);
    Account account = Caller.from(context).signedIn();
    String wanted = Json.text(body, "password");
    if (account.hasPassword()) {
      desk.limits().login(context.ip(), account.name());
      Optional<Account> found = checked(account.name(), Json.text(body, "old"));
      if (found.isEmpty()) {
        throw ApiException.field("old", "This is not the password you have now.");
      }
    }
    String name = Json.optionalText(body, "name").orElse(account.name());
    desk.store().accounts().setPassword(account.id(), name, wanted);
    desk.cookies().clear(context);
    context.status(204);
  }

  private void logout(Context context) {
    Caller.from(context).session().ifPresent(desk.store().sessions()::end);
    desk.cookies().clear(context);
    context.status(204);
  }

  private Map<String, String> settings(Caller caller) {
    Map<String, String> settings = new LinkedHashMap<>();
    Map<String, String> known = new LinkedHashMap<>();
    if (caller.account().isPresent()) {
      Account account = caller.account().get();
      try {
        known.putAll(desk.store().accounts().settings(account.id()));
      } catch (StoreException e) {
        // A damaged database must not keep the page from saying so.
        if (desk.store().trouble().isEmpty()) {
          throw e;
        }
      }
    }
    for (String name : Settings.names()) {
      if (known.containsKey(name)) {
        settings.put(name, known.get(name));
      }
    }
    return settings;
  }

  private void settings(Context context) {
    JsonNode body = Json.body(context);
    Caller caller = Caller.from(context);
    Map<String, String> wanted = new LinkedHashMap<>();
    for (String name : Settings.names()) {
      Json.optionalText(body, name).ifPresent(value -> wanted.put(name, value));
    }
    wanted.forEach(Settings::check);
    wanted.forEach(
        (name, value) -> desk.store().accounts().set(caller.signedIn().id(), name, value));
    Json.send(context, settings(caller));
  }
}
