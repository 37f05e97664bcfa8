package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.grovewright.plan.Plan;
import org.grovewright.web.views.BuyPage;
import org.grovewright.web.views.FigureView;
import org.grovewright.web.views.PlantPage;
import org.grovewright.web.views.PlantsPage;
import org.grovewright.web.views.SummaryPage;
import org.grovewright.web.views.TodayPage;
import org.grovewright.web.views.Voice;
import org.grovewright.web.views.WaterPage;

/** The pages by question, and the working of any figure. */
final class PageApi {
  private final Desk desk;

  PageApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/sites/{id}/pages/{page}", this::page, Access.VIEWER);
    routes.get("/api/sites/{id}/pages/plant/{plant}", this::plant, Access.VIEWER);
    routes.get("/api/sites/{id}/figures/{figure}", this::figure, Access.VIEWER);
  }

  private Plan plan(Context context) {
    return desk.groves().planNow(desk.site(context).description());
  }

  private void page(Context context) {
    LocalDate day = day(context);
    Plan plan = plan(context);
    Voice voice = desk.voice(context, plan.grove());
    Object page =
        switch (context.pathParam("page")) {
          case "buy" -> BuyPage.of(plan, voice);
          case "today" -> TodayPage.of(plan, day, voice);
          case "water" -> WaterPage.of(plan, day, voice);
          case "plants" -> PlantsPage.of(plan, day, voice);
          case "summary" -> SummaryPage.of(plan, voice);
          default ->
              throw new ApiException(
                  404,
                  "missing",
                  "There is no such page; there are buy, today, water, plants and summary.");
        };
    Json.send(context, page);
  }

  private void plant(Context context) {
    LocalDate day = day(context);
    Plan plan = plan(context);
    Optional<PlantPage> page =
        PlantPage.of(plan, context.pathParam("plant"), day, desk.voice(context, plan.grove()));
    Json.send(
        context,
        page.orElseThrow(
            () -> new ApiException(404, "missing", "There is no such plant in this site.")));
  }

  private void figure(Context context) {
    Plan plan = plan(context);
    Optional<FigureView> figure =
        FigureView.of(plan, context.pathParam("figure"), desk.voice(context, plan.grove()));
    Json.send(
        context,
        figure.orElseThrow(
            () -> new ApiException(404, "missing", "There is no such figure in this plan.")));
  }

  private static LocalDate day(Context context) {
    String day = context.queryParam("date");
    try {
      return day == null ? LocalDate.now() : LocalDate.parse(day);
    } catch (DateTimeParseException e) {
      throw ApiException.field("date", "The date must be written as 2027-03-01.");
    }
  }
}
