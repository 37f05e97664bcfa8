package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.hydraulics.SupplyCurve;
import org.grovewright.hydraulics.Water;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply;
import org.grovewright.model.Supply.SupplyKind;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/**
 * What the supply gives, as the network solver needs it.
 *
 * @param curve pressure left at a flow, at the tested outlet
 * @param elevationM height of the tested outlet, metres above the site's zero
 * @param findings assumptions made for what was not measured
 */
public record SupplyModel(SupplyCurve curve, double elevationM, List<Finding> findings) {
  /** Weight of a cubic metre of water, N/m3; turns pascals into metres of head and back. */
  static final double PASCALS_PER_METRE = 1000 * Water.STANDARD_GRAVITY;

  private static final double STEP_PA = 50_000;
  private static final double MAINS_EXPONENT = 1.852;
  private static final double OUTLET_EXPONENT = 2;

  /** Copies the findings. */
  public SupplyModel {
    findings = List.copyOf(findings);
  }

  /** The supply of a grove, with its figures entered under {@code supply}. */
  static SupplyModel of(Grove grove, Catalogue catalogue, Terrain terrain, FigureBook book) {
    Supply supply = grove.supply();
    List<Finding> findings = new ArrayList<>();
    boolean tank = supply.kind() == SupplyKind.GRAVITY_TANK;
    double staticM =
        tank ? tankHead(supply, catalogue, findings) : tapHead(supply, catalogue, findings);
    SupplyCurve curve = curve(supply, staticM, catalogue, findings);
    double elevation = terrain.heightAt(supply.at()) + supply.outletHeightM();
    enterFigures(supply, curve, elevation, book);
    return new SupplyModel(curve, elevation, findings);
  }

  private static double tankHead(Supply supply, Catalogue catalogue, List<Finding> findings) {
    if (supply.tankLevelM().isPresent()) {
      return supply.tankLevelM().getAsDouble();
    }
    Constant assumed = catalogue.constant("irrigation.assumed-tank-level");
    findings.add(
        assumed(
            "supply.tank-level-assumed",
            "The height of the water in the tank is not given; {0} above the outlet is assumed."
                + " Measure it and write it as tank_level.",
            assumed));
    return assumed.value();
  }

  private static double tapHead(Supply supply, Catalogue catalogue, List<Finding> findings) {
    if (supply.staticPressurePa().isPresent()) {
      return supply.staticPressurePa().getAsDouble() / PASCALS_PER_METRE;
    }
    Constant assumed = catalogue.constant("irrigation.assumed-static-pressure");
    findings.add(
        assumed(
            "supply.static-pressure-assumed",
            "The pressure with nothing running is not given; {0} is assumed. Measure it with a"
                + " gauge on the tap and write it as static_pressure.",
            assumed));
    return assumed.value() / PASCALS_PER_METRE;
  }

  private static SupplyCurve curve(
      Supply supply, double staticM, Catalogue catalogue, List<Finding> findings) {
    boolean tank = supply.kind() == SupplyKind.GRAVITY_TANK;
    double n = tank ? OUTLET_EXPONENT : MAINS_EXPONENT;
    if (!supply.flowTests().isEmpty()) {
      List<SupplyCurve.FlowTest> tests = new ArrayList<>();
      for (Supply.FlowTest test : supply.flowTests()) {
        tests.add(
            new SupplyCurve.FlowTest(
                test.volumeM3(), test.seconds(), test.residualPressurePa() / PASCALS_PER_METRE));
      }
      return SupplyCurve.fromTests(staticM, tests, n);
    }
    if (tank) {
      return SupplyCurve.constant(staticM);
    }
    Constant assumed = catalogue.constant("irrigation.assumed-open-flow");
    findings.add(
        assumed(
            "supply.flow-assumed",
            "No bucket test is given; {0} from the open tap is assumed. Time a bucket and write it"
                + " as a flow test: the whole watering plan rests on it.",
            assumed));
    return new SupplyCurve(staticM, staticM / Math.pow(assumed.value(), n), n);
  }

  private static Finding assumed(String code, String message, Constant constant) {
    return Finding.of(
        code, Severity.NOTE, "supply", message, new Quantity(constant.value(), constant.kind()));
  }

  private static void enterFigures(
      Supply supply, SupplyCurve curve, double elevation, FigureBook book) {
    double staticPa = curve.staticHead() * PASCALS_PER_METRE;
    Input measured =
        new Input("static head hs", curve.staticHead(), Kind.HEAD, "description: supply");
    book.enter(
        "supply.static-pressure",
        "Pressure at the supply with nothing running",
        staticPa,
        Kind.PRESSURE,
        Working.of(
            "p = rho g hs", "hydrostatics; water at 1000 kg/m3, g = 9.80665 m/s2", measured));
    book.enter(
        "supply.elevation",
        "Height of the supply outlet above the site's zero",
        elevation,
        Kind.HEAD,
        Working.of(
            "ground height + height of the outlet above ground",
            "survey heights of the description",
            new Input("outlet above ground", supply.outletHeightM(), Kind.HEAD, "description")));
    if (curve.a() == 0) {
      return;
    }
    List<Input> tests = new ArrayList<>();
    tests.add(measured);
    for (Supply.FlowTest test : supply.flowTests()) {
      String which = "test " + (tests.size() + 1) / 2;
      tests.add(new Input(which + ": flow Q", test.flowM3PerS(), Kind.FLOW, "description"));
      tests.add(
          new Input(
              which + ": pressure p", test.residualPressurePa(), Kind.PRESSURE, "description"));
    }
    Working fit =
        new Working(
            "h = hs - a Q^n, a by least squares of the tests, n = " + plain(curve.n()),
            tests,
            curve.n() == OUTLET_EXPONENT
                ? "loss of an outlet, proportional to the square of the flow"
                : "Hazen-Williams exponent for a main behind a service pipe; NFPA 291 hydrant-flow"
                    + " practice uses 0.54 = 1/1.85, from memory");
    for (int step = 0; step * STEP_PA < staticPa && step <= 20; step++) {
      double pressure = step * STEP_PA;
      book.enter(
          "supply.flow-at." + step * 50 + "-kpa",
          step == 0 ? "Flow from the open outlet" : "Flow available at a pressure kept",
          curve.flowAt(pressure / PASCALS_PER_METRE),
          Kind.FLOW,
          step == 0 ? fit : atPressure(fit, pressure));
    }
  }

  private static Working atPressure(Working fit, double pressure) {
    List<Input> inputs = new ArrayList<>(fit.inputs());
    inputs.add(0, new Input("pressure kept p", pressure, Kind.PRESSURE, "step of the table"));
    return new Working(
        "Q = ((hs - p / (rho g)) / a)^(1/n) with " + fit.formula(), inputs, fit.source());
  }

  private static String plain(double n) {
    return String.format(Locale.ROOT, "%.3f", n).replaceAll("0+$", "").replaceAll("\\.$", "");
  }
}
