package org.grovewright.sheets;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.grovewright.buying.ShoppingLine;
import org.grovewright.catalogue.Filter;
import org.grovewright.finding.Finding;
import org.grovewright.irrigation.Alternative;
import org.grovewright.irrigation.Device;
import org.grovewright.irrigation.Line;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.layout.Conflict;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.WateringDays;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.trench.Trench;
import org.grovewright.work.WorkDay;
import org.grovewright.work.WorkSession;
import org.grovewright.work.WorkTask;

/**
 * The plan as data. Numbers are in SI units, whose symbols follow the Unified Code for Units of
 * Measure; money is in the currency named. The order of members and entries is the same in every
 * run. Each entry stands on a line of its own, so that two plans can be compared line by line.
 */
public final class PlanJson {
  /** Name and version of the form of the data. */
  public static final String SCHEMA = "grovewright.plan/1";

  private final Plan plan;
  private final JsonGenerator json;

  private PlanJson(Plan plan, JsonGenerator json) {
    this.plan = plan;
    this.json = json;
  }

  /** The plan as text. */
  public static String of(Plan plan) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
      new PlanJson(plan, json).write();
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.append('\n').toString();
  }

  private void write() throws IOException {
    json.writeStartObject();
    json.writeStringField("schema", SCHEMA);
    json.writeStringField("name", plan.grove().site().name());
    json.writeStringField("start", plan.grove().start().toString());
    json.writeStringField("currency", plan.grove().stock().currency());
    json.writeBooleanField("fallsShort", plan.fallsShort());
    findings();
    layout();
    watering();
    trench();
    ways();
    programme();
    shopping();
    work();
    figures();
    json.writeEndObject();
  }

  private void findings() throws IOException {
    json.writeArrayFieldStart("findings");
    for (Finding finding : plan.findings()) {
      startLine();
      json.writeStringField("code", finding.code());
      json.writeStringField("severity", finding.severity().name().toLowerCase(Locale.ROOT));
      json.writeStringField("subject", finding.subject());
      json.writeStringField("message", finding.message());
      quantities(finding);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void quantities(Finding finding) throws IOException {
    json.writeArrayFieldStart("quantities");
    for (Quantity quantity : finding.quantities()) {
      json.writeStartObject();
      measured(quantity.value(), quantity.kind());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void layout() throws IOException {
    json.writeObjectFieldStart("layout");
    points("boundary", plan.grove().site().boundary());
    json.writeArrayFieldStart("plants");
    for (Planting planting : plan.grove().plantings()) {
      startLine();
      json.writeStringField("id", planting.id());
      json.writeStringField("species", planting.speciesKey());
      if (planting.cultivar().isPresent()) {
        json.writeStringField("cultivar", planting.cultivar().get());
      }
      json.writeNumberField("x", planting.at().x());
      json.writeNumberField("y", planting.at().y());
      if (planting.rowId().isPresent()) {
        json.writeStringField("row", planting.rowId().get());
      }
      json.writeStringField("plantedOn", planting.plantedOn().toString());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("conflicts");
    for (Conflict conflict : plan.layout().conflicts()) {
      startLine();
      json.writeStringField("kind", conflict.kind().name().toLowerCase(Locale.ROOT));
      json.writeStringField("plant", conflict.plantId());
      json.writeStringField("other", conflict.otherId());
      json.writeNumberField("distance", conflict.distanceM());
      json.writeNumberField("needed", conflict.neededM());
      json.writeNumberField("year", conflict.year());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** The filter, which all zones share; pressures in pascals at the greatest flow. */
  private void filter() throws IOException {
    if (plan.watering().zones().isEmpty()) {
      return;
    }
    Filter filter = plan.watering().zones().get(0).design().filter();
    json.writeObjectFieldStart("filter");
    json.writeStringField("key", filter.key());
    json.writeNumberField("mesh", filter.mesh());
    json.writeNumberField("openingM", filter.openingM());
    json.writeNumberField("screenAreaM2", filter.screenAreaM2());
    for (String[] field :
        new String[][] {
          {"screenAreaNeededM2", "area-needed"},
          {"flowM3PerS", "flow"},
          {"lossPa", "loss"},
          {"lossDirtyPa", "loss-dirty"}
        }) {
      json.writeNumberField(field[0], plan.figures().get("irrigation.filter." + field[1]).value());
    }
    json.writeEndObject();
  }

  private void devices() throws IOException {
    json.writeArrayFieldStart("devices");
    for (Device device : plan.watering().devices()) {
      startLine();
      json.writeStringField("item", device.itemKey());
      json.writeStringField("name", device.name());
      json.writeNumberField("count", device.count());
      json.writeNumberField("price", device.price());
      json.writeStringField("why", device.why().message());
      quantities(device.why());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void watering() throws IOException {
    filter();
    devices();
    json.writeArrayFieldStart("zones");
    for (ZoneResult zone : plan.watering().zones()) {
      ZoneDesign design = zone.design();
      startLine();
      json.writeStringField("id", design.id());
      json.writeStringField("mainPipe", design.mainPipe().key());
      json.writeStringField("filter", design.filter().key());
      if (design.regulator().isPresent()) {
        json.writeStringField("regulator", design.regulator().get().key());
      }
      json.writeArrayFieldStart("mains");
      for (List<Point> leg : design.main()) {
        pointArray(leg);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("laterals");
      for (ZoneDesign.LateralDesign lateral : design.laterals()) {
        json.writeStartObject();
        json.writeStringField("id", lateral.id());
        json.writeStringField("row", lateral.rowId());
        json.writeStringField("tubing", lateral.tubing().key());
        json.writeArrayFieldStart("lines");
        for (Line line : lateral.lines()) {
          pointArray(line.path());
        }
        json.writeEndArray();
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeArrayFieldStart("emitters");
      for (ZoneResult.OutletResult outlet : zone.outlets()) {
        startLine();
        json.writeStringField("id", outlet.outlet().id());
        json.writeStringField("plant", plan.grove().plantings().get(outlet.outlet().plant()).id());
        json.writeStringField("emitter", outlet.outlet().emitter().key());
        json.writeNumberField("x", outlet.outlet().at().x());
        json.writeNumberField("y", outlet.outlet().at().y());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void trench() throws IOException {
    Trench trench = plan.watering().trench();
    json.writeObjectFieldStart("trench");
    json.writeArrayFieldStart("segments");
    for (Trench.Segment segment : trench.segments()) {
      startLine();
      json.writeNumberField("number", segment.number());
      json.writeStringField("ground", segment.ground().kind().name().toLowerCase(Locale.ROOT));
      json.writeBooleanField("vehicles", segment.vehicles());
      json.writeNumberField("length", segment.lengthM());
      json.writeNumberField("width", segment.widthM());
      json.writeNumberField("depth", segment.depthM());
      json.writeNumberField("cover", segment.coverM());
      json.writeArrayFieldStart("pipes");
      for (Trench.InTrench pipe : segment.pipes()) {
        json.writeStartObject();
        json.writeStringField("zone", pipe.zone());
        json.writeStringField("pipe", pipe.pipe().key());
        json.writeEndObject();
      }
      json.writeEndArray();
      points("line", segment.line());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("crossings");
    for (Trench.Crossing crossing : trench.crossings()) {
      startLine();
      json.writeStringField("service", crossing.service());
      json.writeStringField("carries", crossing.carries().name().toLowerCase(Locale.ROOT));
      optional("serviceDepth", crossing.serviceDepthM());
      json.writeNumberField("x", crossing.at().x());
      json.writeNumberField("y", crossing.at().y());
      json.writeNumberField("angle", crossing.angleRad());
      json.writeNumberField("segment", crossing.segment());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void ways() throws IOException {
    json.writeArrayFieldStart("ways");
    for (Alternative way : plan.watering().alternatives()) {
      startLine();
      json.writeStringField("key", way.key());
      json.writeStringField("name", way.name());
      json.writeBooleanField("planned", way.planned());
      json.writeBooleanField("keepsRules", way.keepsRules());
      json.writeBooleanField("onFront", way.onFront());
      json.writeNumberField("zones", way.zones());
      json.writeNumberField("emissionUniformity", way.emissionUniformity());
      json.writeNumberField("peakRunSeconds", way.peakRunS());
      json.writeObjectFieldStart("cost");
      json.writeNumberField("pipe", way.cost().pipe());
      json.writeNumberField("fittings", way.cost().fittings());
      json.writeNumberField("goods", way.cost().cash());
      json.writeNumberField("workSeconds", way.cost().workS());
      json.writeNumberField("work", way.cost().labour());
      json.writeNumberField("wastedWaterM3", way.cost().wastedM3());
      json.writeNumberField("wastedWater", way.cost().water());
      json.writeNumberField("total", way.cost().total());
      json.writeEndObject();
      json.writeStringField("why", way.why().message());
      quantities(way.why());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void programme() throws IOException {
    json.writeArrayFieldStart("programme");
    for (TimerSetting setting : plan.programme().settings()) {
      startLine();
      json.writeStringField("zone", setting.zone());
      json.writeNumberField("year", setting.year());
      json.writeNumberField("month", setting.month());
      json.writeNumberField("everyDays", setting.everyDays());
      json.writeNumberField("firstDay", setting.rhythm().firstDay());
      json.writeArrayFieldStart("days");
      for (String day : calendarDays(setting.rhythm())) {
        json.writeString(day);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("starts");
      for (java.time.LocalTime start : setting.starts()) {
        json.writeString(start.toString());
      }
      json.writeEndArray();
      json.writeNumberField("minutesPerCycle", setting.minutesPerCycle());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** The days of the calendar on which a zone waters; none where they are counted. */
  private static List<String> calendarDays(Rhythm rhythm) {
    if (!rhythm.byCalendar()) {
      return List.of();
    }
    WateringDays days = rhythm.days();
    return days.byWeek()
        ? days.weekdays().stream().map(day -> day.name().toLowerCase(Locale.ROOT)).toList()
        : List.of(days.dates().name().toLowerCase(Locale.ROOT) + " dates");
  }

  private void shopping() throws IOException {
    json.writeObjectFieldStart("shopping");
    json.writeNumberField("total", plan.shopping().total());
    json.writeBooleanField("complete", plan.shopping().complete());
    json.writeArrayFieldStart("lines");
    for (ShoppingLine line : plan.shopping().lines()) {
      startLine();
      json.writeStringField("item", line.itemKey());
      json.writeStringField("name", line.name());
      json.writeStringField("unit", unit(line.kind()));
      json.writeNumberField("net", line.net());
      json.writeNumberField("withWaste", line.withWaste());
      json.writeNumberField("onHand", line.onHand());
      optional("packSize", line.packSize());
      json.writeNumberField("packs", line.packs());
      json.writeNumberField("leftOver", line.leftOver());
      optional("packPrice", line.packPrice());
      optional("cost", line.cost());
      json.writeStringField("currency", line.currency());
      json.writeStringField("priceOrigin", line.priceOrigin().name().toLowerCase(Locale.ROOT));
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void work() throws IOException {
    json.writeArrayFieldStart("workDays");
    for (WorkDay day : plan.work().days()) {
      startLine();
      json.writeStringField("date", day.date().toString());
      json.writeArrayFieldStart("sessions");
      for (WorkSession session : day.sessions()) {
        WorkTask task = plan.work().find(session.taskId()).orElseThrow();
        json.writeStartObject();
        json.writeStringField("task", task.id());
        json.writeStringField("name", task.kind().name());
        json.writeStringField("subject", task.subject());
        if (!task.segments().isEmpty()) {
          json.writeStringField("trenchSegments", task.segments());
        }
        json.writeStringField("start", session.start().toString());
        json.writeStringField("end", session.end().toString());
        json.writeNumberField("people", session.people());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void figures() throws IOException {
    json.writeArrayFieldStart("figures");
    for (Figure figure : plan.figures().values()) {
      startLine();
      json.writeStringField("id", figure.id());
      json.writeStringField("label", figure.label());
      measured(figure.value(), figure.kind());
      json.writeObjectFieldStart("working");
      json.writeStringField("formula", figure.working().formula());
      json.writeArrayFieldStart("inputs");
      for (Input input : figure.working().inputs()) {
        json.writeStartObject();
        json.writeStringField("symbol", input.symbol());
        measured(input.value(), input.kind());
        json.writeStringField("origin", input.origin());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeStringField("source", figure.working().source());
      json.writeEndObject();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void startLine() throws IOException {
    json.writeStartObject();
    json.writeRaw('\n');
  }

  private void measured(double value, Kind kind) throws IOException {
    json.writeNumberField("value", value);
    json.writeStringField("unit", unit(kind));
  }

  private String unit(Kind kind) {
    return kind == Kind.MONEY ? plan.grove().stock().currency() : kind.symbol();
  }

  private void optional(String name, OptionalDouble value) throws IOException {
    if (value.isPresent()) {
      json.writeNumberField(name, value.getAsDouble());
    }
  }

  private void points(String name, List<Point> points) throws IOException {
    json.writeFieldName(name);
    pointArray(points);
  }

  private void pointArray(List<Point> points) throws IOException {
    json.writeStartArray();
    for (Point point : points) {
      json.writeStartArray();
      json.writeNumber(point.x());
      json.writeNumber(point.y());
      json.writeEndArray();
    }
    json.writeEndArray();
  }
}
