package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.grovewright.store.Account;
import org.grovewright.store.Role;

/** Accounts, and who may see a site. */
final class MemberApi {
  private final Desk desk;

  MemberApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/accounts", this::accounts, Access.KEEPER);
    routes.post("/api/accounts", this::add, Access.KEEPER);
    routes.put("/api/accounts/{account}/password", this::password, Access.KEEPER);
    routes.delete("/api/accounts/{account}", this::disable, Access.KEEPER);
    routes.get("/api/sites/{id}/members", this::members, Access.OWNER);
    routes.post("/api/sites/{id}/members", this::share, Access.OWNER);
    routes.delete("/api/sites/{id}/members/{account}", this::unshare, Access.OWNER);
  }

  private record AccountView(String id, String name, boolean canSignIn) {
    static AccountView of(Account account) {
      return new AccountView(account.id(), account.name(), account.hasPassword());
    }
  }

  private record MemberView(String id, String name, String role) {}

  private void accounts(Context context) {
    Json.send(context, desk.store().accounts().list().stream().map(AccountView::of).toList());
  }

  private void add(Context context) {
    JsonNode body = Json.body(context);
    Account account =
        desk.store().accounts().add(Json.text(body, "name"), Json.text(body, "password"));
    context.status(201);
    Json.send(context, AccountView.of(account));
  }

  private void password(Context context) {
    JsonNode body = Json.body(context);
    Account account =
        desk.store()
            .accounts()
            .setPassword(
                context.pathParam("account"), Json.text(body, "name"), Json.text(body, "password"));
    Json.send(context, AccountView.of(account));
  }

  private void disable(Context context) {
    desk.store().accounts().disable(context.pathParam("account"));
    context.status(204);
  }

  private void members(Context context) {
    List<MemberView> members =
        desk.store().sites().members(context.pathParam("id")).stream()
            .map(one -> new MemberView(one.accountId(), one.name(), Json.word(one.role())))
            .toList();
    Json.send(context, members);
  }

  /** An account is named as it signs in: its id is nobody's business but the program's. */
  private void share(Context context) {
    JsonNode body = Json.body(context);
    String name = Json.text(body, "name").strip();
    Role role = role(Json.text(body, "role"));
    Optional<Account> account =
        desk.store().accounts().list().stream()
            .filter(one -> one.name().equalsIgnoreCase(name))
            .findFirst();
    desk.store()
        .sites()
        .share(
            context.pathParam("id"),
            account
                .orElseThrow(
                    () ->
                        ApiException.field(
                            "name", "Nobody of this name has an account here; add one first."))
                .id(),
            role);
    members(context);
  }

  private static Role role(String word) {
    try {
      return Role.valueOf(word.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw ApiException.field("role", "'role' must be owner, helper or viewer.");
    }
  }

  private void unshare(Context context) {
    desk.store().sites().unshare(context.pathParam("id"), context.pathParam("account"));
    context.status(204);
  }
}
