package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
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
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.store.SiteState;
import org.grovewright.web.api.QuickFigures.CostView;
import org.grovewright.web.api.QuickFigures.PlaceView;
import org.grovewright.web.views.Voice;

/** Changes that are only looked at. */
final class TryApi {
  private final Desk desk;

  TryApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.post("/api/sites/{id}/try", this::figures, Access.VIEWER);
    routes.post("/api/sites/{id}/try/cost", this::cost, Access.VIEWER);
  }

  private void figures(Context context) {
    long start = System.nanoTime();
    JsonNode body = Json.body(context);
    List<Operation> operations = OperationJson.read(body);
    boolean withCost = body.path("cost").asBoolean(true);
    SiteState state = desk.site(context);
    Catalogue catalogue = desk.groves().catalogue();
    Drag drag = desk.groves().drag(state.description());
    Voice voice = desk.voice(context, drag.described().grove());
    Optional<Map<String, Point>> moves = moves(drag.described(), operations);
    Grove grove = moves.map(drag::moved).orElseGet(() -> changed(state, operations));
    double need = moves.isPresent() ? drag.needM3PerS() : QuickFigures.need(grove, catalogue);
    CostView cost =
        moves.isPresent() && withCost
            ? desk.groves()
                .planWithin(state.description(), 0)
                .map(plan -> CostView.of(drag.cost(plan, grove), plan, voice.units()))
                .orElse(null)
            : null;
    Json.send(
        context,
        QuickFigures.of(grove, catalogue, need, voice, places(grove, operations), cost, start));
  }

  /** Where plants are to stand, if nothing but moving plants along rows or freely is asked for. */
  private static Optional<Map<String, Point>> moves(
      Described described, List<Operation> operations) {
    Map<String, Point> moves = new LinkedHashMap<>();
    for (Operation operation : operations) {
      if (!(operation instanceof Operation.MovePlant move) || move.offRow()) {
        return Optional.empty();
      }
      String id = move.plantId();
      if (!described.plantEntries().containsKey(id) || described.isSpread(id)) {
        return Optional.empty();
      }
      moves.put(id, move.to());
    }
    return Optional.of(moves);
  }

  private Grove changed(SiteState state, List<Operation> operations) {
    return desk.groves()
        .describe(desk.groves().editor().apply(state.description(), operations))
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

  private void cost(Context context) {
    List<Operation> operations = OperationJson.read(Json.body(context));
    SiteState state = desk.site(context);
    Drag drag = desk.groves().drag(state.description());
    Plan before = desk.groves().planNow(state.description());
    ReaderUnits units = desk.voice(context, before.grove()).units();
    double total =
        moves(drag.described(), operations)
            .map(moves -> drag.cost(before, drag.moved(moves)))
            .orElseGet(() -> desk.groves().planOf(changed(state, operations)).shopping().total());
    Json.send(context, CostView.of(total, before, units));
  }
}
