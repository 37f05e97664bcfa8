package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import org.grovewright.start.FirstPlan;
import org.grovewright.start.Remark;

/** Turns the answers of a first plan into a description, without saving it. */
final class StartApi {
  private record DraftView(
      String description,
      List<Remark> problems,
      List<Remark> assumptions,
      List<FirstPlan.DraftRow> rows) {}

  private final Desk desk;

  StartApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/start", this::draft, Access.SIGNED_IN);
  }

  private void draft(Context context) {
    Groves groves = desk.groves();
    FirstPlan.Draft draft =
        new FirstPlan(groves.catalogue(), groves.reader())
            .draft(Json.body(context), LocalDate.now(), desk.language(context));
    Json.send(
        context,
        new DraftView(
            draft.description().orElse(null), draft.problems(), draft.assumptions(), draft.rows()));
  }
}
