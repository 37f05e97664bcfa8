package org.grovewright.ground;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.layout.Crown;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;

/**
 * Holes, soil, mulch and feeding of a grove.
 *
 * <p>Figures entered: {@code ground.plant.<id>.} with {@code ball-volume}, {@code ball-width},
 * {@code ball-height}, {@code ball-mass}, {@code hole-width}, {@code hole-depth}, {@code
 * hole-volume}, {@code backfill}, {@code mix-placed}, {@code mix-bought}, {@code dug-loose}, {@code
 * surplus}, {@code amendment.<key>}, on a mound {@code raise} and {@code mound-volume}, and for
 * each year {@code nitrogen.year-1} and {@code feeding.year-1} (fertiliser of one feeding); {@code
 * ground.row.<id>.mulch-area}; {@code ground.total.} with sums, masses, barrow loads and counts;
 * {@code ground.drainage-rate}; {@code ground.species.<key>.lime} or {@code .sulphur}.
 *
 * @param plants the holes of the plants still to be planted, in the order of the description
 * @param mixKey catalogue key of the bought mix, if any goes in
 * @param mix bought mix as delivered
 * @param amendmentsKg amendments for the backfill, kg by catalogue key
 * @param mulch the mulching, if the catalogue has mulch
 * @param fertiliserKey catalogue key of the fertiliser, if the catalogue has one
 * @param feedings every feeding of the years planned, by plant and then by date
 * @param drainage what the drainage test says
 * @param requirements goods needed
 * @param work work to be done
 * @param findings remarks
 */
public record GroundPlan(
    List<PlantGround> plants,
    Optional<String> mixKey,
    BulkLoad mix,
    Map<String, Double> amendmentsKg,
    Optional<MulchPlan> mulch,
    Optional<String> fertiliserKey,
    List<Feeding> feedings,
    Drainage drainage,
    List<Requirement> requirements,
    List<WorkAmount> work,
    List<Finding> findings) {
  /** Copies the collections. */
  public GroundPlan {
    plants = List.copyOf(plants);
    amendmentsKg = Collections.unmodifiableMap(new LinkedHashMap<>(amendmentsKg));
    feedings = List.copyOf(feedings);
    requirements = List.copyOf(requirements);
    work = List.copyOf(work);
    findings = List.copyOf(findings);
  }

  /**
   * Plans the ground and enters the figures.
   *
   * @throws IllegalArgumentException if the owner's choices or a plant name something the catalogue
   *     does not have, or a choice is out of range
   */
  public static GroundPlan of(Grove grove, Catalogue catalogue, FigureBook book) {
    List<Finding> findings = new ArrayList<>();
    List<Crown> crowns = new ArrayList<>();
    grove.plantings().forEach(plant -> crowns.add(Crown.of(plant, grove, catalogue)));
    List<Crown> toPlant = crowns.stream().filter(crown -> !crown.standing()).toList();

    Chosen chosen = Chosen.of(grove.preferences().ground(), grove.soil(), catalogue, findings);
    Drainage drainage = Drainage.of(grove.soil(), catalogue, book);
    drainage.advice(catalogue, book).ifPresent(findings::add);

    Holes holes = new Holes(catalogue, chosen, drainage, grove.soil().depthM(), book, findings);
    List<PlantGround> plants = new ArrayList<>();
    toPlant.forEach(crown -> plants.add(holes.of(crown)));

    Totals totals = new Totals(plants, catalogue, book);
    totals.counts(toPlant);
    totals.soil(grove.soil(), chosen);
    BulkLoad mix = totals.mix(chosen.mix());
    Map<String, Double> amendments = totals.amendments(chosen.amendments());

    Optional<MulchPlan> mulch =
        crowns.isEmpty()
            ? Optional.empty()
            : chosen
                .mulch()
                .map(
                    row ->
                        new Mulching(grove, catalogue, book, new MulchRings.Memory())
                            .of(crowns, row));
    List<Feeding> feedings = feedings(grove, catalogue, chosen, crowns, book);
    totals.fertiliser(chosen.fertiliser(), feedings);

    GroundChecks checks = new GroundChecks(grove, catalogue, findings);
    checks.holes(toPlant, plants);
    checks.soilDepth(crowns);
    new SoilReaction(grove.soil(), catalogue, book).advise(crowns, findings);

    Demand demand = new Demand(catalogue, book);
    return new GroundPlan(
        plants,
        chosen.mix().map(SoilMix::key),
        mix,
        amendments,
        mulch,
        chosen.fertiliser().map(Amendment::key),
        feedings,
        drainage,
        demand.goods(chosen.mix(), chosen.amendments(), mulch, chosen.fertiliser(), toPlant),
        demand.work(chosen.mix().isPresent() || !chosen.amendments().isEmpty()),
        findings);
  }

  /**
   * The goods of this plan if plants stood elsewhere: only the rings of mulch lie differently.
   *
   * @param moved the grove of this plan with other places of plants
   * @param memory what is known from other places
   */
  public List<Requirement> requirementsWhenMoved(
      Grove moved, Catalogue catalogue, MulchRings.Memory memory) {
    if (mulch.isEmpty()) {
      return requirements;
    }
    List<Crown> crowns = new ArrayList<>();
    moved.plantings().forEach(plant -> crowns.add(Crown.of(plant, moved, catalogue)));
    FigureBook aside = new FigureBook();
    new Mulching(moved, catalogue, aside, memory)
        .of(crowns, catalogue.mulches().get(mulch.get().mulchKey()));
    double delivered = aside.get(Mulching.DELIVERED).value();
    return requirements.stream()
        .map(
            one ->
                one.figureId().equals(Mulching.DELIVERED)
                    ? new Requirement(
                        one.itemKey(),
                        one.kind(),
                        delivered,
                        one.purpose(),
                        one.figureId(),
                        one.cuts())
                    : one)
        .toList();
  }

  private static List<Feeding> feedings(
      Grove grove, Catalogue catalogue, Chosen chosen, List<Crown> crowns, FigureBook book) {
    List<Feeding> feedings = new ArrayList<>();
    chosen
        .fertiliser()
        .map(row -> new FeedingPlan(grove, catalogue, row, book))
        .ifPresent(plan -> crowns.forEach(crown -> feedings.addAll(plan.of(crown))));
    return feedings;
  }
}
