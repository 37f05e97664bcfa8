package org.grovewright.web.api;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.growth.Growth;
import org.grovewright.irrigation.Line;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.layout.Conflict;
import org.grovewright.layout.Crown;
import org.grovewright.layout.LayoutCheck;
import org.grovewright.model.Fixture;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.grovewright.model.Watering;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Words;
import org.grovewright.trench.LaidMain;
import org.grovewright.web.api.Scene.Bounds;
import org.grovewright.web.api.Scene.ConflictView;
import org.grovewright.web.api.Scene.CrossingView;
import org.grovewright.web.api.Scene.EmitterView;
import org.grovewright.web.api.Scene.FixtureView;
import org.grovewright.web.api.Scene.HeightView;
import org.grovewright.web.api.Scene.MainView;
import org.grovewright.web.api.Scene.Origin;
import org.grovewright.web.api.Scene.OwnLineView;
import org.grovewright.web.api.Scene.PipeView;
import org.grovewright.web.api.Scene.PlantView;
import org.grovewright.web.api.Scene.RowView;
import org.grovewright.web.api.Scene.ShapeView;
import org.grovewright.web.api.Scene.SupplyView;
import org.grovewright.web.api.Scene.TrenchView;
import org.grovewright.web.api.Scene.ZoneView;
import org.grovewright.web.views.Voice;

/** Gathers what the map draws from a grove and, once it is made, its plan. */
final class SceneMaker {
  private static final int YEARS = 10;
  private static final int NEED_YEAR = 3;
  private static final double LITRES_A_WEEK = 7 * 86_400 * 1000.0;

  private final Described described;
  private final Grove grove;
  private final Catalogue catalogue;
  private final Optional<Plan> plan;
  private final Voice voice;

  SceneMaker(Described described, Catalogue catalogue, Optional<Plan> plan, Voice voice) {
    this.described = described;
    this.grove = described.grove();
    this.catalogue = catalogue;
    this.plan = plan;
    this.voice = voice;
  }

  Scene make(long version) {
    List<Conflict> conflicts =
        plan.map(p -> p.layout().conflicts())
            .orElseGet(() -> LayoutCheck.conflicts(grove, catalogue));
    List<PlantView> plants = plants(conflicts);
    return new Scene(
        version,
        plan.isEmpty(),
        plan.map(Plan::fallsShort).orElse(null),
        bounds(plants),
        grove.site().northBearingDeg(),
        new Origin(grove.site().latitudeDeg(), grove.site().longitudeDeg()),
        grove.start().toString(),
        points(grove.site().boundary()),
        fixtures(),
        rows(),
        plants,
        heights(),
        new SupplyView(
            Json.word(grove.supply().kind()), grove.supply().at().x(), grove.supply().at().y()),
        pipes(),
        main(),
        ownLines(),
        trench(),
        crossings(),
        emitters(),
        zones(),
        conflicts.stream().map(one -> conflict(one, voice)).toList());
  }

  static ConflictView conflict(Conflict one, Voice voice) {
    return new ConflictView(
        Json.word(one.kind()),
        one.plantId(),
        one.otherId(),
        one.distanceM(),
        one.neededM(),
        one.year(),
        ReaderUnits.plainSpaces(
            Words.message(
                voice.language().say(one.finding().message()),
                one.finding().quantities(),
                voice.units())));
  }

  private static double[] pair(Point point) {
    return new double[] {point.x(), point.y()};
  }

  private static List<double[]> points(List<Point> points) {
    return points.stream().map(SceneMaker::pair).toList();
  }

  private Bounds bounds(List<PlantView> plants) {
    double minX = Double.POSITIVE_INFINITY;
    double minY = Double.POSITIVE_INFINITY;
    double maxX = Double.NEGATIVE_INFINITY;
    double maxY = Double.NEGATIVE_INFINITY;
    List<double[]> all = new ArrayList<>(points(grove.site().boundary()));
    all.add(pair(grove.supply().at()));
    plants.forEach(plant -> all.add(new double[] {plant.x(), plant.y()}));
    for (double[] point : all) {
      minX = Math.min(minX, point[0]);
      minY = Math.min(minY, point[1]);
      maxX = Math.max(maxX, point[0]);
      maxY = Math.max(maxY, point[1]);
    }
    return new Bounds(minX, minY, maxX, maxY);
  }

  private List<FixtureView> fixtures() {
    List<FixtureView> views = new ArrayList<>();
    for (Fixture fixture : grove.site().fixtures()) {
      views.add(
          new FixtureView(
              fixture.id(),
              views.size(),
              Json.word(fixture.kind()),
              shape(fixture.shape()),
              fixture.heightM(),
              boxed(fixture.clearanceM()),
              fixture.traffic().map(Json::word).orElse(null),
              fixture
                  .service()
                  .map(Fixture.Service::kind)
                  .filter(kind -> kind != Fixture.Carries.UNKNOWN)
                  .map(Json::word)
                  .orElse(null),
              fixture.service().map(service -> boxed(service.depthM())).orElse(null)));
    }
    return views;
  }

  private static Double boxed(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static ShapeView shape(Shape shape) {
    if (shape instanceof Shape.Area area) {
      return new ShapeView("area", points(area.corners()), null);
    }
    if (shape instanceof Shape.Line line) {
      return new ShapeView("line", points(line.points()), null);
    }
    Shape.Round round = (Shape.Round) shape;
    return new ShapeView("round", List.of(pair(round.centre())), round.radiusM());
  }

  private List<RowView> rows() {
    List<RowView> views = new ArrayList<>();
    grove.rows().forEach(row -> views.add(new RowView(row.id(), views.size(), points(row.line()))));
    return views;
  }

  private List<HeightView> heights() {
    List<HeightView> views = new ArrayList<>();
    grove
        .site()
        .spotHeights()
        .forEach(
            spot ->
                views.add(
                    new HeightView(views.size(), spot.at().x(), spot.at().y(), spot.heightM())));
    return views;
  }

  private List<PlantView> plants(List<Conflict> conflicts) {
    Set<String> near = new HashSet<>();
    for (Conflict conflict : conflicts) {
      near.add(conflict.plantId());
      near.add(conflict.otherId());
    }
    Set<String> shorts = new HashSet<>();
    plan.ifPresent(
        p ->
            p.findings().stream()
                .filter(finding -> finding.severity() == Finding.Severity.SHORTFALL)
                .forEach(finding -> shorts.add(finding.subject())));
    Map<Integer, String> zones = new HashMap<>();
    plan.ifPresent(
        p ->
            p.watering()
                .zones()
                .forEach(
                    zone ->
                        zone.outlets()
                            .forEach(
                                outlet -> zones.put(outlet.outlet().plant(), zone.design().id()))));
    List<PlantView> views = new ArrayList<>();
    for (Planting planting : grove.plantings()) {
      String id = planting.id();
      String status = near.contains(id) ? "conflict" : shorts.contains(id) ? "short" : "ok";
      views.add(plant(planting, zones.get(views.size()), status));
    }
    return views;
  }

  private PlantView plant(Planting planting, String zone, String status) {
    Species species = catalogue.species().get(planting.speciesKey());
    Crown crown = Crown.of(planting, grove, catalogue);
    Growth growth = Growth.of(planting, species, grove.start(), catalogue.constants());
    double[] crowns = new double[YEARS + 1];
    double[] heights = new double[YEARS + 1];
    for (int year = 0; year <= YEARS; year++) {
      crowns[year] = crown.spreadM(year);
      double age = crown.ageAt(year);
      heights[year] = age < 0 ? 0 : growth.heightM(age);
    }
    return new PlantView(
        planting.id(),
        species.key(),
        voice.language().say(species.name()),
        planting.cultivar().orElse(null),
        Json.word(species.role()),
        planting.at().x(),
        planting.at().y(),
        planting.rowId().orElse(null),
        !described.isSpread(planting.id()),
        planting.plantedOn().toString(),
        boxed(planting.measured().spreadM()),
        boxed(planting.measured().heightM()),
        planting.measured().on().map(Object::toString).orElse(null),
        crowns,
        heights,
        2 * crown.fullRadiusM(),
        plan.map(
                p ->
                    p.water().plant(planting.id()).peakOf(NEED_YEAR).need().value() * LITRES_A_WEEK)
            .orElse(null),
        zone,
        status);
  }

  private List<PipeView> pipes() {
    List<PipeView> pipes = new ArrayList<>();
    for (ZoneResult zone : zoneResults()) {
      ZoneDesign design = zone.design();
      List<List<List<Point>>> missing = LaidMain.of(grove).missing(design.main());
      int leg = 1;
      for (List<Point> path : design.main()) {
        boolean laid = grove.watering().mainLaid() && missing.get(leg - 1).isEmpty();
        pipes.add(
            new PipeView(
                design.id() + "-main-" + leg++,
                design.id(),
                "main",
                design.mainPipe().key(),
                design.mainPipe().name(),
                points(path),
                null,
                null,
                laid));
      }
      for (ZoneDesign.LateralDesign lateral : design.laterals()) {
        for (Line line : lateral.lines()) {
          pipes.add(
              new PipeView(
                  line.id(),
                  design.id(),
                  "lateral",
                  lateral.tubing().key(),
                  lateral.tubing().name(),
                  points(line.path()),
                  lateral.rowId(),
                  Json.word(lateral.run()),
                  lateral.laid()));
        }
      }
    }
    return pipes;
  }

  private List<TrenchView> trench() {
    return plan.map(p -> p.watering().trench().segments()).orElse(List.of()).stream()
        .map(
            part ->
                new TrenchView(
                    part.number(),
                    voice
                        .language()
                        .text(
                            "map.trench",
                            String.valueOf(part.number()),
                            text(part.lengthM(), Kind.LENGTH),
                            text(part.depthM(), Kind.LENGTH)),
                    voice.language().say(part.ground().name()),
                    part.vehicles(),
                    text(part.depthM(), Kind.LENGTH),
                    text(part.widthM(), Kind.LENGTH),
                    text(part.lengthM(), Kind.LENGTH),
                    points(part.line())))
        .toList();
  }

  private List<CrossingView> crossings() {
    return plan.map(p -> p.watering().trench().crossings()).orElse(List.of()).stream()
        .map(
            one ->
                new CrossingView(
                    one.service(),
                    Json.word(one.carries()),
                    one.segment(),
                    one.at().x(),
                    one.at().y()))
        .toList();
  }

  private MainView main() {
    return new MainView(
        grove.watering().mainPipeKey().orElse(null),
        points(grove.watering().mainRoute()),
        grove.watering().mainLaid());
  }

  private List<OwnLineView> ownLines() {
    List<OwnLineView> lines = new ArrayList<>();
    for (Watering.Lateral lateral : grove.watering().laterals()) {
      lines.add(ownLine("/watering/laterals/" + lines.size(), lateral));
    }
    for (int z = 0; z < grove.watering().zones().size(); z++) {
      List<Watering.Lateral> laterals = grove.watering().zones().get(z).laterals();
      for (int l = 0; l < laterals.size(); l++) {
        lines.add(ownLine("/watering/zones/" + z + "/laterals/" + l, laterals.get(l)));
      }
    }
    return lines;
  }

  private static OwnLineView ownLine(String path, Watering.Lateral lateral) {
    return new OwnLineView(
        path,
        lateral.rowId(),
        Json.word(lateral.run()),
        lateral.tubingKey().orElse(null),
        lateral.laid(),
        points(lateral.route()));
  }

  private List<ZoneResult> zoneResults() {
    return plan.map(p -> p.watering().zones()).orElse(List.of());
  }

  private List<EmitterView> emitters() {
    List<EmitterView> emitters = new ArrayList<>();
    for (ZoneResult zone : zoneResults()) {
      for (ZoneResult.OutletResult outlet : zone.outlets()) {
        emitters.add(
            new EmitterView(
                outlet.outlet().id(),
                grove.plantings().get(outlet.outlet().plant()).id(),
                zone.design().id(),
                outlet.outlet().at().x(),
                outlet.outlet().at().y(),
                outlet.pressurePa(),
                outlet.flowM3PerS(),
                text(outlet.pressurePa(), Kind.PRESSURE),
                text(outlet.flowM3PerS(), Kind.EMITTER_FLOW)));
      }
    }
    return emitters;
  }

  private List<ZoneView> zones() {
    return zoneResults().stream()
        .map(
            zone ->
                new ZoneView(
                    zone.design().id(),
                    zone.flowM3PerS(),
                    text(zone.flowM3PerS(), Kind.FLOW),
                    zone.emissionUniformity()))
        .toList();
  }

  private String text(double value, Kind kind) {
    return ReaderUnits.plainSpaces(voice.units().text(value, kind));
  }
}
