package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.irrigation.Remedies.Remedy;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.api.Test;

/**
 * What a remedy is said to do, against the zone solved anew with the remedied emitters. The minutes
 * are need over flow, so no outside source is needed.
 */
class RemediesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Path EXAMPLES = Path.of("../examples");
  private static final Pattern REFIT = Pattern.compile("ith (\\d) \u00d7 (.*?) (in that|it would)");
  private static final Pattern MOVE = Pattern.compile("On the valve of (\\S+) with");
  private static final Pattern ONE_MORE = Pattern.compile("One more emitter at (\\S+), which");

  private final List<String> seen = new ArrayList<>();

  /** Emitters that the owner chose badly: the same for thirsty trees and for herbs. */
  private static Plan plan(String emitters) throws IOException {
    String text =
        Files.readString(EXAMPLES.resolve("demo.yaml"))
            .replace(
                "    route: [[13.5 m, 9.5 m], [3 m, 9.5 m]]\n",
                "    route: [[13.5 m, 9.5 m], [3 m, 9.5 m]]\n"
                    + "  zones:\n"
                    + "    - {id: upper, laterals: [{row: B, run: loop"
                    + emitters
                    + "}]}\n"
                    + "    - {id: lower, laterals: [{row: A, run: loop"
                    + emitters
                    + "}]}\n");
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null).read(text, "demo.yaml", EXAMPLES), CATALOGUE);
  }

  @Test
  void aRemedyDoesWhatItIsSaidToDo() throws IOException {
    for (String emitters :
        List.of(
            "",
            ", emitter: emitter.pc-2, emitters_per_plant: 2, companion_emitter: emitter.pc-8",
            ", emitter: emitter.pc-4, emitters_per_plant: 6, companion_emitter: emitter.pc-2")) {
      check(plan(emitters));
    }
    assertThat(seen).contains("refit", "moved", "one more", "own valve");
  }

  private void check(Plan plan) {
    Grove grove = plan.grove();
    List<PlantSupply> supplies = plan.programme().supplies();
    Remedies remedies = new Remedies(grove, CATALOGUE, plan.watering(), supplies);
    for (PlantSupply wet : supplies) {
      if (wet.needsM3PerS() <= 0 || wet.share() < 1.5) {
        continue;
      }
      Remedy remedy = remedies.of(wet);
      Matcher refit = REFIT.matcher(remedy.words());
      Matcher more = ONE_MORE.matcher(remedy.words());
      Matcher move = MOVE.matcher(remedy.words());
      if (remedy.ownValve()) {
        ownValve(wet, supplies, remedy);
      } else if (move.find() && refit.find()) {
        move(wet, plan, remedy, move.group(1), Integer.parseInt(refit.group(1)), refit.group(2));
      } else if (refit.find()) {
        refit(wet, plan, remedy, Integer.parseInt(refit.group(1)), refit.group(2));
      } else {
        assertThat(more.find()).as(remedy.words()).isTrue();
        oneMore(wet, plan, remedy, more.group(1));
      }
    }
  }

  /** On a valve of its own it gets its need, of which a tenth is lost on the way. */
  private void ownValve(PlantSupply wet, List<PlantSupply> supplies, Remedy remedy) {
    double saved =
        supplies.stream()
            .filter(s -> s.plant() == wet.plant() && s.year() == wet.year())
            .mapToDouble(s -> Math.max(0, s.getsM3PerS() - s.needsM3PerS()))
            .sum();
    assertThat(remedy.amount()).isCloseTo(saved / 0.9 * 365.25 / 12 * 86_400, within(1e-9));
    seen.add("own valve");
  }

  private void refit(PlantSupply wet, Plan plan, Remedy remedy, int count, String name) {
    EmitterType type =
        CATALOGUE.emitters().values().stream()
            .filter(e -> e.name().equals(name))
            .findFirst()
            .orElseThrow();
    ZoneResult before = zone(plan, wet);
    ZoneResult after =
        solve(plan, before, wet.plant(), wet.year(), places(before, wet.plant(), count, type));
    double was = before.plantFlows().get(wet.plant());
    double is = after.plantFlows().get(wet.plant());
    assertThat(remedy.amount()).isCloseTo(wet.getsM3PerS() * is / was, withinPercentage(2));
    for (PlantSupply s : plan.programme().supplies()) {
      if (s.plant() == wet.plant() && s.year() == wet.year()) {
        assertThat(s.getsM3PerS() * is / was).isGreaterThanOrEqualTo(0.98 * s.needsM3PerS());
      }
    }
    seen.add("refit");
  }

  /**
   * The plant is taken from its valve and hung, with new emitters, on the nearest line of another.
   */
  private void move(PlantSupply wet, Plan plan, Remedy remedy, String to, int count, String name) {
    EmitterType type =
        CATALOGUE.emitters().values().stream()
            .filter(e -> e.name().equals(name))
            .findFirst()
            .orElseThrow();
    ZoneResult before =
        plan.watering().zonesIn(wet.year()).stream()
            .filter(z -> z.design().id().equals(to))
            .findFirst()
            .orElseThrow();
    ZoneResult after = hung(plan, before, wet, count, type);
    double is = after.plantFlows().get(wet.plant());
    Point at = plan.grove().plantings().get(wet.plant()).at();
    double away =
        before.design().laterals().stream()
            .flatMap(l -> l.lines().stream())
            .mapToDouble(l -> at.distanceTo(foot(l, at)))
            .min()
            .orElseThrow();
    assertThat(remedy.awayM()).isCloseTo(away, within(1e-9));
    // The rows of the demo lie 8 m apart, so the plant is not beside that line.
    assertThat(away).isBetween(6.0, 10.0);
    // What a unit of flow gives in the month by the minutes of the other valve, which must run
    // longer for its own plants if the newcomer takes pressure from them.
    double longer = longest(plan, to, wet, after) / longest(plan, to, wet, before);
    double perFlow = perFlow(plan, to, wet.year(), wet.month(), before);
    assertThat(remedy.amount()).isCloseTo(is * perFlow * longer, withinPercentage(3));
    assertThat(remedy.amount()).isLessThan(0.85 * wet.getsM3PerS());
    for (PlantSupply s : plan.programme().supplies()) {
      if (s.plant() == wet.plant() && s.year() == wet.year() && s.needsM3PerS() > 0) {
        assertThat(is * perFlow(plan, to, s.year(), s.month(), before))
            .isGreaterThanOrEqualTo(0.98 * s.needsM3PerS());
      }
      if (s.zone().equals(to) && s.year() == wet.year() && s.needsM3PerS() > 0) {
        double left = after.plantFlows().get(s.plant()) / before.plantFlows().get(s.plant());
        assertThat(left).as("what %s keeps", s.plant()).isGreaterThan(0.97);
      }
    }
    seen.add("moved");
  }

  private static double perFlow(Plan plan, String zone, int year, int month, ZoneResult solved) {
    PlantSupply one =
        plan.programme().supplies().stream()
            .filter(s -> s.zone().equals(zone) && s.year() == year && s.month() == month)
            .filter(s -> solved.plantFlows().getOrDefault(s.plant(), 0.0) > 0)
            .findFirst()
            .orElseThrow();
    return one.getsM3PerS() / solved.plantFlows().get(one.plant());
  }

  /** The zone with emitters for one more plant, at the place of its lines nearest to the plant. */
  private static ZoneResult hung(
      Plan plan, ZoneResult zone, PlantSupply wet, int count, EmitterType type) {
    Point at = plan.grove().plantings().get(wet.plant()).at();
    List<Line> all = zone.design().laterals().stream().flatMap(l -> l.lines().stream()).toList();
    Line nearest =
        all.stream().min(Comparator.comparingDouble(l -> at.distanceTo(foot(l, at)))).orElseThrow();
    double along = new Row("", nearest.path()).stationOf(at);
    List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
    for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
      List<Line> lines = new ArrayList<>();
      for (Line line : lateral.lines()) {
        List<Outlet> on = new ArrayList<>(line.outlets());
        for (int i = 0; line.equals(nearest) && i < count; i++) {
          on.add(new Outlet("hung-" + i, wet.plant(), type, foot(line, at), along, 0));
        }
        on.sort(Comparator.comparingDouble(Outlet::alongM));
        lines.add(new Line(line.id(), line.path(), line.closed(), on));
      }
      laterals.add(
          new ZoneDesign.LateralDesign(
              lateral.id(), lateral.rowId(), lateral.run(), lateral.tubing(), lines));
    }
    return solve(plan, zone, laterals, wet.year());
  }

  private static Point foot(Line line, Point at) {
    Row way = new Row("", line.path());
    return way.at(way.stationOf(at));
  }

  private void oneMore(PlantSupply wet, Plan plan, Remedy remedy, String plantId) {
    int plant = -1;
    for (int i = 0; i < plan.grove().plantings().size(); i++) {
      plant = plan.grove().plantings().get(i).id().equals(plantId) ? i : plant;
    }
    int thirsty = plant;
    ZoneResult before = zone(plan, wet);
    List<EmitterType> has =
        before.outlets().stream()
            .filter(o -> o.outlet().plant() == thirsty)
            .map(o -> o.outlet().emitter())
            .toList();
    if (has.stream().distinct().count() > 1) {
      return;
    }
    ZoneResult after =
        solve(
            plan, before, thirsty, wet.year(), places(before, thirsty, has.size() + 1, has.get(0)));
    double ratio = longest(plan, wet.zone(), wet, after) / longest(plan, wet.zone(), wet, before);
    double flows = after.plantFlows().get(wet.plant()) / before.plantFlows().get(wet.plant());
    assertThat(remedy.amount()).isCloseTo(wet.getsM3PerS() * ratio * flows, withinPercentage(3));
    seen.add("one more");
  }

  /** Longest time that a plant of the zone wants in the month, as a share of the day. */
  private static double longest(Plan plan, String id, PlantSupply wet, ZoneResult zone) {
    double longest = 0;
    for (PlantSupply s : plan.programme().supplies()) {
      Double flow = zone.plantFlows().get(s.plant());
      boolean here = s.zone().equals(id) && s.year() == wet.year() && s.month() == wet.month();
      if (flow != null && here) {
        longest = Math.max(longest, s.needsM3PerS() / flow);
      }
    }
    return longest;
  }

  private static ZoneResult zone(Plan plan, PlantSupply wet) {
    return plan.watering().zonesIn(wet.year()).stream()
        .filter(z -> z.design().id().equals(wet.zone()))
        .findFirst()
        .orElseThrow();
  }

  /** So many emitters of a sort where the plant has its first. */
  private static List<Outlet> places(ZoneResult zone, int plant, int count, EmitterType type) {
    Outlet first =
        zone.outlets().stream()
            .map(ZoneResult.OutletResult::outlet)
            .filter(o -> o.plant() == plant)
            .findFirst()
            .orElseThrow();
    List<Outlet> outlets = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      outlets.add(new Outlet(first.id() + "-new-" + i, plant, type, first.at(), first.alongM(), 0));
    }
    return outlets;
  }

  /** The zone of a year with other emitters at a plant. */
  private static ZoneResult solve(
      Plan plan, ZoneResult zone, int plant, int year, List<Outlet> outlets) {
    List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
    boolean placed = false;
    for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
      List<Line> lines = new ArrayList<>();
      for (Line line : lateral.lines()) {
        List<Outlet> on = new ArrayList<>();
        for (Outlet outlet : line.outlets()) {
          if (outlet.plant() != plant) {
            on.add(outlet);
          } else if (!placed && outlet.openIn(year)) {
            on.addAll(outlets);
            placed = true;
          }
        }
        lines.add(new Line(line.id(), line.path(), line.closed(), on));
      }
      laterals.add(
          new ZoneDesign.LateralDesign(
              lateral.id(), lateral.rowId(), lateral.run(), lateral.tubing(), lines));
    }
    return solve(plan, zone, laterals, year);
  }

  private static ZoneResult solve(
      Plan plan, ZoneResult zone, List<ZoneDesign.LateralDesign> laterals, int year) {
    ZoneDesign old = zone.design();
    ZoneDesign design =
        new ZoneDesign(
            old.id(), old.main(), old.mainPipe(), laterals, old.regulator(), old.filter(), year);
    return ZoneResult.solve(
        design,
        SiteParts.of(
            plan.grove(), CATALOGUE, plan.watering().supply(), Terrain.of(plan.grove().site())));
  }
}
