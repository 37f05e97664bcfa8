package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.grovewright.advice.WaterLog;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.JournalKind;
import org.grovewright.web.views.AdviceView;
import org.grovewright.web.views.BuyPage;
import org.grovewright.web.views.FigureView;
import org.grovewright.web.views.LabelsPage;
import org.grovewright.web.views.PlantPage;
import org.grovewright.web.views.PlantsPage;
import org.grovewright.web.views.SummaryPage;
import org.grovewright.web.views.TodayPage;
import org.grovewright.web.views.Voice;
import org.grovewright.web.views.WaterPage;

/** The pages by question, the working of any figure, and the labels. */
final class PageApi {
  private static final Pattern ADDRESS = Pattern.compile("https?://[A-Za-z0-9.\\[\\]:_-]{1,250}/?");

  private final Desk desk;

  PageApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/sites/{id}/pages/{page}", this::page, Access.VIEWER);
    routes.get("/api/sites/{id}/pages/plant/{plant}", this::plant, Access.VIEWER);
    routes.get("/api/sites/{id}/figures/{figure}", this::figure, Access.VIEWER);
    routes.get("/api/sites/{id}/labels", this::labels, Access.VIEWER);
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
          case "today" -> TodayPage.of(plan, day, waterLog(context), voice);
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
    String id = context.pathParam("figure");
    // Figures of the advice are of a day, not of the plan.
    Map<String, Figure> ofDay =
        id.startsWith("advice.")
            ? AdviceView.figures(plan, day(context), waterLog(context))
            : Map.of();
    Optional<FigureView> figure = FigureView.of(plan, ofDay, id, desk.voice(context, plan.grove()));
    Json.send(
        context,
        figure.orElseThrow(
            () -> new ApiException(404, "missing", "There is no such figure in this plan.")));
  }

  private void labels(Context context) {
    String address = context.queryParam("address");
    if (address == null || !ADDRESS.matcher(address).matches()) {
      throw ApiException.field(
          "address",
          "The address must be that of this program as a phone can reach it, such as"
              + " http://192.168.1.20:4680.");
    }
    Grove grove = desk.groves().described(desk.site(context).description()).grove();
    String site = address.replaceFirst("/$", "") + "/site/" + context.pathParam("id");
    Json.send(
        context, LabelsPage.of(grove, desk.groves().catalogue(), site, desk.voice(context, grove)));
  }

  /** The journal's notes of rain, and of watering by zone or of the whole site. */
  private WaterLog waterLog(Context context) {
    List<WaterLog.Run> runs = new ArrayList<>();
    NavigableMap<LocalDate, Double> rain = new TreeMap<>();
    for (JournalEntry entry : desk.store().journal().list(context.pathParam("id"))) {
      Content content = entry.content();
      boolean zone = content.subjectKind() == SubjectKind.ZONE;
      boolean site = content.subjectKind() == SubjectKind.SITE;
      if (content.amount().isEmpty()) {
        continue;
      }
      Quantity amount = content.amount().get();
      if (content.kind() == JournalKind.RAIN) {
        rain.merge(content.day(), amount.value(), Double::sum);
      } else if (content.kind() == JournalKind.WATERED
          && amount.kind() == Kind.RUN_TIME
          && (zone || site)) {
        runs.add(WaterLog.Run.timed(content.day(), content.subject(), amount.value()));
      } else if (content.kind() == JournalKind.WATERED
          && amount.kind() == Kind.WATER_VOLUME
          && zone) {
        runs.add(WaterLog.Run.metered(content.day(), content.subject(), amount.value()));
      }
    }
    return new WaterLog(runs, rain);
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
