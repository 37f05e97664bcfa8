package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.edit.Operation;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.store.SiteState;
import org.grovewright.web.api.QuickFigures.PlaceView;
import org.grovewright.web.views.Voice;

/** Changes that are only looked at. */
final class TryApi {
  private static final int KEPT = 40;

  private final Desk desk;
  private final Cache<String, Double> needs = Caffeine.newBuilder().maximumSize(KEPT).build();

  TryApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/sites/{id}/try", this::figures, Access.VIEWER);
    routes.post("/api/sites/{id}/try/cost", this::cost, Access.VIEWER);
  }

  private void figures(Context context) {
    long start = System.nanoTime();
    List<Operation> operations = OperationJson.read(Json.body(context));
    SiteState state = desk.site(context);
    Described described = desk.groves().described(state.description());
    Catalogue catalogue = desk.groves().catalogue();
    Voice voice = desk.voice(context, described.grove());
    Optional<Map<String, Point>> moves = moves(described, operations);
    // Where a plant stands makes no difference to what it needs.
    Grove grove = changed(state, described, operations);
    double need =
        moves.isPresent()
            ? needs.get(
                state.description(), text -> QuickFigures.need(described.grove(), catalogue))
            : QuickFigures.need(grove, catalogue);
    Json.send(
        context, QuickFigures.of(grove, catalogue, need, voice, places(grove, operations), start));
  }

  /** Where plants are to stand, if nothing but moving plants along rows or freely is asked for. */
  private static Optional<Map<String, Point>> moves(
      Described described, List<Operation> operations) {
    Map<String, Point> moves = new LinkedHashMap<>();
    for (Operation operation : operations) {
      if (!(operation instanceof Operation.MovePlant move) || move.offRow()) {
        return Optional.empty();
      }
      String entry = described.plantEntries().get(move.plantId());
      if (entry == null || entry.contains("].companions[")) {
        return Optional.empty();
      }
      moves.put(move.plantId(), move.to());
    }
    return Optional.of(moves);
  }

  private Grove changed(SiteState state, Described described, List<Operation> operations) {
    String text = state.description();
    return moves(described, operations)
        .map(moves -> desk.groves().describe(text, moves))
        .orElseGet(() -> desk.groves().describe(desk.groves().editor().apply(text, operations)))
        .grove();
  }

  private static List<PlaceView> places(Grove grove, List<Operation> operations) {
    List<String> moved =
        operations.stream()
            .filter(Operation.MovePlant.class::isInstance)
            .map(one -> ((Operation.MovePlant) one).plantId())
            .toList();
    return grove.plantings().stream()
        .filter(plant -> moved.contains(plant.id()))
        .map(TryApi::place)
        .toList();
  }

  private static PlaceView place(Planting plant) {
    return new PlaceView(plant.id(), plant.at().x(), plant.at().y());
  }

  private record CostView(double total, double change, String totalText, String changeText) {}

  private void cost(Context context) {
    JsonNode body = Json.body(context);
    List<Operation> operations = OperationJson.read(body);
    SiteState state = desk.site(context);
    Described described = desk.groves().described(state.description());
    ReaderUnits units = desk.voice(context, described.grove()).units();
    Plan before = desk.groves().planNow(state.description());
    Grove changed = changed(state, described, operations);
    double total = desk.groves().planOf(changed).shopping().total();
    double change = total - before.shopping().total();
    Json.send(context, new CostView(total, change, money(total, units), money(change, units)));
  }

  private static String money(double amount, ReaderUnits units) {
    return ReaderUnits.plainSpaces(units.text(amount, Kind.MONEY));
  }
}
