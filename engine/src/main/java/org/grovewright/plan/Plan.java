package org.grovewright.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.buying.ShoppingList;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Caution;
import org.grovewright.finding.Finding;
import org.grovewright.ground.GroundPlan;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.layout.LayoutReport;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Figure;
import org.grovewright.storage.TankYears;
import org.grovewright.water.WaterNeeds;
import org.grovewright.work.CareCalendar;
import org.grovewright.work.WorkPlan;

/**
 * A complete plan: each subject's result, every figure with its working, every remark.
 *
 * @param grove what was planned
 * @param catalogue the tables it was planned with
 * @param layout what stands where, and what is too close
 * @param ground holes, soil, amendments, mulch and feeding
 * @param water what each plant needs
 * @param watering the watering system
 * @param programme the timer
 * @param storage how the tank fares under its roof; empty where there is no roof over a tank
 * @param shopping what to buy
 * @param work dated work days
 * @param care the years after
 * @param cautions warnings that belong to the tasks and plants of this plan, by key
 * @param findings all remarks, shortfalls first
 * @param figures all figures by id, in the order they were found
 */
public record Plan(
    Grove grove,
    Catalogue catalogue,
    LayoutReport layout,
    GroundPlan ground,
    WaterNeeds water,
    WateringSystem watering,
    Programme programme,
    Optional<TankYears> storage,
    ShoppingList shopping,
    WorkPlan work,
    CareCalendar care,
    Map<String, Caution> cautions,
    List<Finding> findings,
    Map<String, Figure> figures) {
  /** Copies the collections in their order. */
  public Plan {
    cautions = Collections.unmodifiableMap(new LinkedHashMap<>(cautions));
    findings = List.copyOf(findings);
    figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
  }

  /** Whether the plan falls short anywhere. */
  public boolean fallsShort() {
    return findings.stream().anyMatch(f -> f.severity() == Finding.Severity.SHORTFALL);
  }

  /** The figure with this id, if there is one. */
  public Optional<Figure> figure(String id) {
    return Optional.ofNullable(figures.get(id));
  }
}
