package org.grovewright.work;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.Species;
import org.grovewright.ground.Feeding;
import org.grovewright.ground.GroundPlan;
import org.grovewright.ground.MulchPlan;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
import org.grovewright.work.Recurrence.Frequency;

/** The care of the plants: feeding, mulch, ties and stakes, measuring, cold nights. */
final class PlantCare {
  private static final int FEEDING_DAY = 15;

  private final Grove grove;
  private final Catalogue catalogue;
  private final GroundPlan ground;
  private final WorkPlan work;
  private final LocalDate from;
  private final LocalDate until;

  PlantCare(
      Grove grove,
      Catalogue catalogue,
      GroundPlan ground,
      WorkPlan work,
      LocalDate from,
      LocalDate until) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.ground = ground;
    this.work = work;
    this.from = from;
    this.until = until;
  }

  List<CareEvent> events(FigureBook figures) {
    List<CareEvent> events = new ArrayList<>();
    feeding(events, figures);
    ground.mulch().ifPresent(plan -> mulch(events, plan));
    stakes(events);
    measuring(events);
    coldNights(events);
    return events;
  }

  private void feeding(List<CareEvent> events, FigureBook figures) {
    Map<YearMonth, List<Feeding>> byMonth = new TreeMap<>();
    for (Feeding feeding : ground.feedings()) {
      LocalDate day = feeding.when().atDay(FEEDING_DAY);
      if (feeding.fertiliserKg() > 0 && !day.isBefore(grove.start()) && !day.isAfter(until)) {
        byMonth.computeIfAbsent(feeding.when(), m -> new ArrayList<>()).add(feeding);
      }
    }
    byMonth.forEach(
        (month, feedings) -> {
          double total = 0;
          List<Input> doses = new ArrayList<>();
          for (Feeding feeding : feedings) {
            total += feeding.fertiliserKg();
            doses.add(new Input("F", feeding.fertiliserKg(), Kind.MASS, feeding.figureId()));
          }
          figures.enter(
              "care.feeding." + month,
              "Fertiliser of all feedings in " + month,
              total,
              Kind.MASS,
              new Working("sum(F)", doses, "arithmetic"));
          events.add(feedingEvent(month, feedings, total));
        });
  }

  private CareEvent feedingEvent(YearMonth month, List<Feeding> feedings, double total) {
    Amendment fertiliser = catalogue.amendments().get(feedings.get(0).fertiliserKey());
    Map<String, Planting> plants = new LinkedHashMap<>();
    grove.plantings().forEach(p -> plants.put(p.id(), p));
    // Plants of one species with one dose are named together.
    Map<Dose, List<String>> byDose = new LinkedHashMap<>();
    for (Feeding feeding : feedings) {
      String species = plants.get(feeding.plantId()).speciesKey();
      byDose
          .computeIfAbsent(
              new Dose(species, Math.round(feeding.fertiliserKg() * 1000)), d -> new ArrayList<>())
          .add(feeding.plantId());
    }
    List<Quantity> quantities = new ArrayList<>();
    quantities.add(new Quantity(total, Kind.MASS));
    StringBuilder message =
        new StringBuilder("Give ").append(fertiliser.name()).append(", {0} in all: ");
    Set<String> species = new LinkedHashSet<>();
    String comma = "";
    for (Map.Entry<Dose, List<String>> dose : byDose.entrySet()) {
      String name = catalogue.species().get(dose.getKey().speciesKey()).name();
      species.add(name);
      message
          .append(comma)
          .append(name)
          .append(' ')
          .append(String.join(", ", dose.getValue()))
          .append(" {")
          .append(quantities.size())
          .append(dose.getValue().size() > 1 ? "} each" : "}");
      quantities.add(new Quantity(dose.getKey().grams() / 1000.0, Kind.MASS));
      comma = "; ";
    }
    message.append(". Spread it under the outer half of the crown, off the stem, and water it in.");
    Set<String> cautions = new LinkedHashSet<>(List.of("fertiliser"));
    fertiliser.caution().ifPresent(cautions::add);
    return new CareEvent(
        "care.feeding." + month,
        CareEvent.Kind.FEEDING,
        month.atDay(FEEDING_DAY),
        Optional.empty(),
        "Feed " + String.join(", ", species),
        message.toString(),
        quantities,
        List.copyOf(cautions),
        "species' feeding months and rates, catalogue: species");
  }

  private void mulch(List<CareEvent> events, MulchPlan plan) {
    Mulch mulch = catalogue.mulches().get(plan.mulchKey());
    LocalDate laid = lastDayOf("spread-mulch").orElse(from);
    long days = Math.round(mulch.renewYears() * 365.25);
    int number = 1;
    for (LocalDate due = laid.plusDays(days);
        days > 0 && !due.isAfter(until);
        due = due.plusDays(days)) {
      events.add(
          new CareEvent(
              "care.mulch." + number++,
              CareEvent.Kind.MULCH,
              due,
              Optional.empty(),
              "Renew the mulch",
              "Top the "
                  + mulch.name()
                  + " up to {0} over {1}. Keep it a hand's breadth off the stems.",
              List.of(
                  new Quantity(mulch.depthM(), Kind.LENGTH),
                  new Quantity(plan.areaM2(), Kind.AREA)),
              List.of("lifting", "dust"),
              mulch.source()));
    }
  }

  private Optional<LocalDate> lastDayOf(String taskKey) {
    return work.tasks().stream()
        .filter(t -> t.kind().key().equals(taskKey))
        .flatMap(t -> t.finish().stream())
        .max(Comparator.naturalOrder())
        .map(LocalDateTime::toLocalDate);
  }

  private void stakes(List<CareEvent> events) {
    Optional<LocalDate> staked = lastDayOf("stake-tree");
    if (staked.isEmpty()) {
      return;
    }
    Constant off = catalogue.constant("care.stakes-off-after");
    LocalDate removal = staked.get().plusDays(Math.round(off.value() / 86_400));
    LocalDate last = removal.minusDays(1).isAfter(until) ? until : removal.minusDays(1);
    LocalDate first = staked.get().plusMonths(1);
    if (!first.isAfter(last)) {
      events.add(
          new CareEvent(
              "care.ties",
              CareEvent.Kind.SUPPORT,
              first,
              Optional.of(new Recurrence(Frequency.MONTHLY, 1, new TreeSet<>(), last)),
              "Check ties and stakes",
              "Loosen ties that press into the bark and make fast stakes that wobble. Take the"
                  + " stake away early from a tree that stands by itself.",
              List.of(),
              List.of(),
              off.source()));
    }
    if (!removal.isAfter(until)) {
      events.add(
          new CareEvent(
              "care.stakes-off",
              CareEvent.Kind.SUPPORT,
              removal,
              Optional.empty(),
              "Take stakes and ties away",
              "A tree that still cannot stand by itself keeps its stake for another season; ask"
                  + " why it cannot.",
              List.of(),
              List.of(),
              off.source()));
    }
  }

  private void measuring(List<CareEvent> events) {
    LocalDate first = from.plusYears(1);
    if (grove.plantings().isEmpty() || first.isAfter(until)) {
      return;
    }
    events.add(
        new CareEvent(
            "care.measure",
            CareEvent.Kind.MEASURING,
            first,
            Optional.of(new Recurrence(Frequency.YEARLY, 1, new TreeSet<>(), until)),
            "Measure the crowns",
            "Measure every crown along and across its row, and its height. Write the mean into the"
                + " description as the measured spread, the height as the measured height and the"
                + " day beside them, and make the plan anew: water and feeding follow the size"
                + " the plants really have.",
            List.of(),
            List.of(),
            Working.COMMON_PRACTICE));
  }

  /** For each month whose coldest night is below what some plant then stands. */
  private void coldNights(List<CareEvent> events) {
    Constant young = catalogue.constant("care.young-for");
    for (YearMonth month = YearMonth.from(from);
        !month.atDay(1).isAfter(until);
        month = month.plusMonths(1)) {
      double lowest = ColdNights.lowest(grove.climate(), month.getMonthValue(), catalogue);
      Set<String> tender = new LinkedHashSet<>();
      double limit = Double.NEGATIVE_INFINITY;
      for (Planting planting : grove.plantings()) {
        Species species = catalogue.species().get(planting.speciesKey());
        LocalDate grown = planting.plantedOn().plusDays(Math.round(young.value() / 86_400));
        double stands =
            month.atDay(1).isBefore(grown)
                ? ColdNights.youngLimit(species, catalogue)
                : species.coldLimitC();
        boolean there = !planting.plantedOn().isAfter(month.atEndOfMonth());
        if (there && lowest < stands) {
          tender.add(species.name());
          limit = Math.max(limit, stands);
        }
      }
      if (!tender.isEmpty()) {
        events.add(
            new CareEvent(
                "care.cold." + month,
                CareEvent.Kind.COLD,
                month.atDay(1).isBefore(from) ? from : month.atDay(1),
                Optional.empty(),
                "Watch for cold nights",
                "Nights of {0} are to be expected this month, and the tenderest of these stands"
                    + " only about {1}: "
                    + String.join(", ", tender)
                    + ". Watch the forecast, water the day before a cold night where the water is"
                    + " not shut off, and cover the plants overnight.",
                List.of(
                    new Quantity(lowest, Kind.TEMPERATURE), new Quantity(limit, Kind.TEMPERATURE)),
                List.of(),
                young.source()));
      }
    }
  }

  private record Dose(String speciesKey, long grams) {}
}
