package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Site;
import org.grovewright.plan.Plan;
import org.grovewright.sheets.ReportHtml.Fact;
import org.grovewright.texts.Language;

/** Puts the report of a plan together. */
final class ReportOfPlan {
  private final Plan plan;
  private final ReaderUnits units;
  private final Workings workings;

  ReportOfPlan(Plan plan, ReaderUnits units) {
    this.plan = plan;
    this.units = units;
    this.workings = new Workings(List.copyOf(plan.figures().values()), units);
  }

  ReportHtml.Report report() {
    AttentionSection attention = new AttentionSection(plan, units);
    List<Fact> facts = facts();
    List<Section> sections = new ArrayList<>();
    sections.add(new Section("attention", "What needs attention", attention.attention()));
    sections.add(
        new Section(
            "layout", "What goes where", new LayoutSection(plan, workings, units).blocks()));
    List<Block> ground = new ArrayList<>(new GroundSection(plan, workings).blocks());
    ground.addAll(new BuyingSection(plan.shopping(), plan.catalogue(), workings, units).blocks());
    sections.add(new Section("ground", "What to dig, fill and buy", ground));
    sections.add(
        new Section(
            "water",
            "How the water runs",
            new WaterSection(plan.grove(), plan.watering(), workings, units).blocks()));
    if (!plan.watering().zones().isEmpty()) {
      sections.add(
          new Section(
              "pressure",
              "What reaches each plant",
              new PressureSection(plan, workings, units).blocks()));
    }
    if (!plan.watering().trench().segments().isEmpty()) {
      sections.add(
          new Section(
              "trench",
              "Where the mains are dug",
              new TrenchSection(
                      plan.watering().trench(), plan.grove().site().fixtures(), workings, units)
                  .blocks()));
    }
    if (!plan.watering().alternatives().isEmpty()) {
      sections.add(
          new Section(
              "ways",
              "Ways to build the watering",
              new WaysSection(plan.grove(), plan.watering().alternatives(), workings, units)
                  .blocks()));
    }
    sections.add(
        new Section(
            "timer",
            "How long to water",
            new TimerSection(plan.grove(), plan.programme(), workings, units).blocks()));
    plan.storage()
        .ifPresent(
            tank ->
                sections.add(
                    new Section(
                        "tank",
                        "How the tank fares",
                        new TankSection(
                                tank,
                                plan.grove().supply().tankVolumeM3().orElseThrow(),
                                plan.grove().preferences().units(),
                                workings,
                                units)
                            .blocks())));
    sections.add(
        new Section(
            "work",
            "Work days",
            new WorkSection(plan.work(), plan.catalogue(), workings, units).blocks()));
    sections.add(
        new Section(
            "care", "Care through the year", new CareSection(plan, workings, units).blocks()));
    sections.add(new Section("assumptions", "What was assumed", attention.assumptions()));
    return new ReportHtml.Report(
        plan.grove().site().name(),
        subtitle(),
        plan.fallsShort(),
        verdict(plan),
        facts,
        sections,
        workings.entries());
  }

  private String subtitle() {
    Site site = plan.grove().site();
    Language language = units.language();
    return language.text(
        "sheet.place",
        degrees(site.latitudeDeg(), "north", "south"),
        degrees(site.longitudeDeg(), "east", "west"),
        language.date(plan.grove().start()));
  }

  private String degrees(double value, String positive, String negative) {
    Language language = units.language();
    return language.text(
        "sheet.degrees-" + (value < 0 ? negative : positive),
        language.decimals(Decimals.fixed(Math.abs(value), 3)));
  }

  /** How the plan stands, in a sentence. */
  static String verdict(Plan plan) {
    long shortfalls =
        plan.findings().stream().filter(f -> f.severity() == Severity.SHORTFALL).count();
    return shortfalls == 0
        ? "The plan is complete and meets all that was asked of it."
        : "The plan is made, but it falls short in "
            + Words.count(shortfalls, "place", "places")
            + ".";
  }

  private List<Fact> facts() {
    List<Fact> facts = new ArrayList<>();
    long main =
        plan.grove().plantings().stream()
            .filter(p -> plan.catalogue().species().get(p.speciesKey()).role() == Species.Role.MAIN)
            .count();
    long others = plan.grove().plantings().size() - main;
    facts.add(
        new Fact(
            "Plants",
            Cell.of(main + " main" + (others == 0 ? "" : ", " + others + " companions"))));
    facts.add(new Fact("To buy, about", workings.cell("buy.total.cost")));
    facts.add(new Fact("Work for one person", workings.cell("work.total.person-time")));
    plan.work()
        .finish()
        .ifPresent(
            finish ->
                facts.add(new Fact("Done on", Cell.of(Words.shortDate(finish.toLocalDate())))));
    facts.add(new Fact("Watering zones", Cell.of(String.valueOf(plan.watering().zones().size()))));
    return facts;
  }
}
