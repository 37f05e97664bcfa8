package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;
import org.grovewright.store.Account;
import org.grovewright.store.StoreException;

/** Who the caller is and how it likes to read. */
final class AccountApi {
  private final Desk desk;

  AccountApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/me", this::me, Access.ANYBODY);
    routes.put("/api/me/settings", this::settings, Access.SIGNED_IN);
  }

  private record AccountView(String id, String name) {}

  private void me(Context context) {
    Caller caller = Caller.from(context);
    Map<String, Object> answer = new LinkedHashMap<>();
    caller
        .account()
        .ifPresent(account -> answer.put("account", new AccountView(account.id(), account.name())));
    answer.put("loggedIn", caller.account().isPresent());
    answer.put("needsLogin", desk.needsLogin() && caller.account().isEmpty());
    answer.put("keeper", caller.keeper());
    answer.put("csrf", caller.csrf());
    answer.put("settings", settings(caller));
    answer.put("languages", Texts.LANGUAGES);
    desk.store().trouble().ifPresent(t -> answer.put("trouble", ProgramApi.trouble(t)));
    Json.send(context, answer);
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
